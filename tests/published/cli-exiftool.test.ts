/**
 * Written plans against ExifTool, driven for real. Its conventions:
 * pupil ratio 1, distances from the lens, circle of confusion the 35 mm frame's diagonal over 1440 and
 * scaled, hyperfocal f²/(N·c) without the + f, far 0 where it is endless, angle of view at infinity.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { ShotFiguresJson } from '../../shared/figures/json.ts';
import { unitFocusing } from './support/chains.ts';
import { figureIn, figuresOfPlan, numberIn } from './support/command-line.ts';
import { type CompositeTags, compositesOf, type WrittenTags } from './support/exiftool.ts';
import { randomFrom } from './support/random.ts';
import { plain, type WrittenShot, writtenPlan } from './support/written-plan.ts';

const random = randomFrom(3571);
const combinations = Array.from({ length: 240 }, () => {
  const FocalLength = random.whole(18, 400);
  return {
    FocalLength,
    FNumber: random.whole(14, 640) / 10,
    SubjectDistance: Math.round(random.spread(1.9 * FocalLength, 400 * FocalLength)) / 1000,
    FocalLengthIn35mmFormat: Math.round(FocalLength * random.between(0.8, 2.7)),
    ExposureTime: 1 / random.whole(1, 4000),
    ISO: random.whole(50, 25600),
  };
});

/** A recorded area of 3:2 whose diagonal is 1500 times this circle, which is what plans take by default. */
function areaFor(circleMm: number): string {
  const unit = (1500 * circleMm) / Math.hypot(3, 2);
  return `${plain(3 * unit)} x ${plain(2 * unit)} mm`;
}

/** The lens alone on a body, focused by its magnification on a subject this far from it. */
function depthShot(tags: WrittenTags, circleMm: number, fromLensMm: number): WrittenShot {
  const magnification = tags.FocalLength / (fromLensMm - tags.FocalLength);
  return {
    parts: [
      { kind: 'body', flangeMm: 44 },
      unitFocusing(tags.FocalLength, Math.max(1, magnification)),
    ],
    record: { area: areaFor(circleMm) },
    fields: { magnification: `${plain(magnification)}x`, aperture: `f/${tags.FNumber}` },
  };
}

const ILLUMINANCE_LX = 2500;

/** The lens at infinity, where its f-number is the marked one, under a known illuminance. */
function exposureShot(tags: WrittenTags): WrittenShot {
  return {
    parts: [{ kind: 'body', flangeMm: 44 }, unitFocusing(tags.FocalLength, 1)],
    light: { kind: 'daylight', illuminance: `${ILLUMINANCE_LX} lx` },
    fields: {
      ring: 'infinity',
      aperture: `f/${tags.FNumber}`,
      shutter: `1/${Math.round(1 / (tags.ExposureTime as number))} s`,
      iso: String(tags.ISO),
    },
  };
}

/** Where the pupil is from the subject: the lens stands f(1 + m0) ahead of the sensor. */
function fromLensMm(tags: WrittenTags, shot: ShotFiguresJson | undefined): number {
  const lensAhead = tags.FocalLength * (1 + numberIn(shot, 'ringMagnification'));
  return numberIn(shot, 'subjectToSensorMm') - lensAhead;
}

describe('written plans against ExifTool, driven', () => {
  let cases: { tags: WrittenTags; composite: CompositeTags; name: string }[] = [];
  let figures: Readonly<Record<string, ShotFiguresJson>> = {};

  beforeAll(async () => {
    const composites = await compositesOf(combinations);
    cases = composites.map((composite, index) => ({
      tags: combinations[index] as WrittenTags,
      composite,
      name: `shot-${index}`,
    }));
    const shots: Record<string, WrittenShot> = {};
    for (const { tags, composite, name } of cases) {
      const { circleOfConfusionMm, hyperfocalM } = composite;
      // As it has no + f, its hyperfocal distance is counted from the front focus.
      const boundaryMm = 1000 * hyperfocalM + tags.FocalLength;
      shots[name] = depthShot(tags, circleOfConfusionMm, tags.SubjectDistance * 1000);
      shots[`${name}-under`] = depthShot(tags, circleOfConfusionMm, boundaryMm * 0.999);
      shots[`${name}-over`] = depthShot(tags, circleOfConfusionMm, boundaryMm * 1.001);
      shots[`${name}-light`] = exposureShot(tags);
      shots[`${name}-far`] = depthShot(tags, circleOfConfusionMm, 1e4 * tags.FocalLength);
    }
    figures = figuresOfPlan(writtenPlan(shots));
  }, 120_000);

  it('covers finite and endless depth', () => {
    expect(cases.length).toBeGreaterThanOrEqual(200);
    const endless = cases.filter(({ composite }) => composite.farM === 0).length;
    expect(endless).toBeGreaterThan(10);
    expect(cases.length - endless).toBeGreaterThan(100);
  });

  it('agrees on both ends of the depth of field', () => {
    for (const { tags, composite, name } of cases) {
      const what = JSON.stringify(tags);
      const shot = figures[name];
      const distanceMm = fromLensMm(tags, shot);
      expect(distanceMm / 1000 / tags.SubjectDistance, what).toBeCloseTo(1, 5);
      const circle = numberIn(shot, 'circleOfConfusionMm');
      expect(circle / composite.circleOfConfusionMm, what).toBeCloseTo(1, 6);
      const front = numberIn(shot, 'depthMm.front');
      const behind = figureIn(shot, 'depthMm.behind');
      expect((distanceMm - front) / 1000 / composite.nearM, what).toBeCloseTo(1, 5);
      if (composite.farM === 0) expect(behind, what).toBe('endless');
      else expect((distanceMm + Number(behind)) / 1000 / composite.farM, what).toBeCloseTo(1, 4);
    }
  });

  it('agrees on the hyperfocal distance: where depth becomes endless', () => {
    for (const { tags, name } of cases) {
      const total = (which: string) => figureIn(figures[`${name}-${which}`], 'depthMm.total');
      expect(total('over'), JSON.stringify(tags)).toBe('endless');
      expect(total('under'), JSON.stringify(tags)).toBeTypeOf('number');
    }
  });

  it('agrees on the angle of view', () => {
    for (const { tags, composite, name } of cases) {
      const shot = figures[`${name}-far`];
      const width = numberIn(shot, 'fieldMm.0');
      // Its frame is 3:2 with the diagonal of the 35 mm frame, scaled; ours has 1500 circles for its 1440.
      const itsWidthMm = (width * 1440) / 1500;
      const degrees = (2 * Math.atan(itsWidthMm / 2 / fromLensMm(tags, shot)) * 180) / Math.PI;
      expect(degrees / composite.fovDeg, JSON.stringify(tags)).toBeCloseTo(1, 3);
    }
  });

  it('agrees on the light value', () => {
    for (const { tags, composite, name } of cases) {
      // At C 250 an illuminance E makes EV log2(E/2.5) at ISO 100; what is left over is the exposure's error.
      const error = numberIn(figures[`${name}-light`], 'exposureErrorStops');
      const lightValue = Math.log2(ILLUMINANCE_LX / 2.5) - error;
      expect(lightValue, JSON.stringify(tags)).toBeCloseTo(composite.lightValue as number, 5);
    }
  });
});

describe('against values once read from ExifTool', () => {
  const circleMm = 43.2666 / 1440;

  it.each([
    { FocalLength: 100, FNumber: 8, SubjectDistance: 0.5, nearM: 0.4952384, farM: 0.5048541 },
    { FocalLength: 100, FNumber: 16, SubjectDistance: 0.2, nearM: 0.1990431, farM: 0.2009661 },
    { FocalLength: 60, FNumber: 22, SubjectDistance: 0.18, nearM: 0.1761194, farM: 0.1840555 },
  ])('f $FocalLength N $FNumber at $SubjectDistance m', ({ nearM, farM, ...given }) => {
    const tags = { ...given, FocalLengthIn35mmFormat: given.FocalLength };
    const asked = depthShot(tags, circleMm, tags.SubjectDistance * 1000);
    const { shot } = figuresOfPlan(writtenPlan({ shot: asked }));
    const distanceM = fromLensMm(tags, shot) / 1000;
    expect(distanceM - numberIn(shot, 'depthMm.front') / 1000).toBeCloseTo(nearM, 6);
    expect(distanceM + numberIn(shot, 'depthMm.behind') / 1000).toBeCloseTo(farM, 6);
  });

  it('f/8, 1/125 s, ISO 100 is light value 12.965784', () => {
    const tags = { FocalLength: 50, FNumber: 8, ExposureTime: 1 / 125, ISO: 100 };
    const asked = exposureShot({ ...tags, SubjectDistance: 1, FocalLengthIn35mmFormat: 50 });
    const { shot } = figuresOfPlan(writtenPlan({ shot: asked }));
    const error = numberIn(shot, 'exposureErrorStops');
    expect(Math.log2(ILLUMINANCE_LX / 2.5) - error).toBeCloseTo(12.965784, 6);
  });
});
