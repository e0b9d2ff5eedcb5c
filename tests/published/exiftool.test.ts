import { beforeAll, describe, expect, it } from 'vitest';
import { evOfSettings } from '../../shared/exposure/ev.ts';
import { traceChain } from '../../shared/optics/chain.ts';
import { depthByPupil } from '../support/depth-by-pupil.ts';
import { chainOf, unitFocusing } from './support/chains.ts';
import { type CompositeTags, compositesOf, type WrittenTags } from './support/exiftool.ts';
import { randomFrom } from './support/random.ts';

/**
 * Depth of field, hyperfocal distance, field of view and light value against ExifTool's composite tags.
 * Its conventions: pupil ratio 1, distances from the lens, hyperfocal f²/(N·c) without the + f, far 0
 * where it is endless, field of view at infinity for a 3:2 frame, π as 3.14159 there.
 */

/** A lens alone, set so that a subject this far from it is sharp. */
function focusedAt(focalMm: number, fromLensMm: number) {
  const magnification = focalMm / (fromLensMm - focalMm);
  const closest = Math.max(1, magnification);
  const chain = chainOf({ kind: 'body', flangeMm: 44 }, unitFocusing(focalMm, closest));
  return traceChain(chain, magnification);
}

function ends(tags: WrittenTags, circleOfConfusionMm: number) {
  const trace = focusedAt(tags.FocalLength, tags.SubjectDistance * 1000);
  const pupilDistanceMm = trace.pupilDistanceMm as number;
  const depth = depthByPupil({
    blurMm: circleOfConfusionMm,
    magnification: trace.magnification as number,
    pupilDiameterMm: (trace.pupilFocalMm as number) / tags.FNumber,
    pupilDistanceMm,
  });
  return {
    nearM: (pupilDistanceMm - depth.frontMm) / 1000,
    farM: (pupilDistanceMm + depth.behindMm) / 1000,
  };
}

const random = randomFrom(2306);
const combinations: WrittenTags[] = Array.from({ length: 240 }, () => {
  const FocalLength = random.whole(18, 400);
  const FNumber = random.whole(14, 640) / 10;
  const nearest = 1.9 * FocalLength;
  const SubjectDistance = Math.round(random.spread(nearest, 400 * FocalLength)) / 1000;
  const FocalLengthIn35mmFormat = Math.round(FocalLength * random.between(0.8, 2.7));
  const ExposureTime = 1 / random.whole(1, 4000);
  const ISO = random.whole(50, 25600);
  return { FocalLength, FNumber, ExposureTime, ISO, SubjectDistance, FocalLengthIn35mmFormat };
});

describe('against ExifTool, driven', () => {
  let cases: { tags: WrittenTags; composite: CompositeTags }[] = [];

  beforeAll(async () => {
    const composites = await compositesOf(combinations);
    cases = composites.map((composite, index) => ({
      tags: combinations[index] as WrittenTags,
      composite,
    }));
  }, 120_000);

  it('covers finite and endless depth', () => {
    expect(cases.length).toBeGreaterThanOrEqual(200);
    const endless = cases.filter(({ composite }) => composite.farM === 0).length;
    expect(endless).toBeGreaterThan(10);
    expect(cases.length - endless).toBeGreaterThan(100);
  });

  it('agrees on both ends of the depth of field', () => {
    for (const { tags, composite } of cases) {
      const { nearM, farM } = ends(tags, composite.circleOfConfusionMm);
      const what = JSON.stringify(tags);
      expect(nearM / composite.nearM, what).toBeCloseTo(1, 8);
      if (composite.farM === 0) expect(farM, what).toBe(Number.POSITIVE_INFINITY);
      else expect(farM / composite.farM, what).toBeCloseTo(1, 6);
    }
  });

  it('agrees on where depth becomes endless', () => {
    for (const { tags, composite } of cases) {
      const boundary = composite.hyperfocalM + tags.FocalLength / 1000;
      const at = (SubjectDistance: number) =>
        ends({ ...tags, SubjectDistance }, composite.circleOfConfusionMm).farM;
      expect(at(boundary * 0.9999)).toBeLessThan(Number.POSITIVE_INFINITY);
      expect(at(boundary * 1.0001)).toBe(Number.POSITIVE_INFINITY);
    }
  });

  it('agrees on the angle of view', () => {
    for (const { tags, composite } of cases) {
      const sensorWidthMm = (36 * tags.FocalLength) / tags.FocalLengthIn35mmFormat;
      const fromLensMm = 1e6 * tags.FocalLength;
      const fieldMm =
        sensorWidthMm / (focusedAt(tags.FocalLength, fromLensMm).magnification as number);
      const degrees = (2 * Math.atan(fieldMm / 2 / fromLensMm) * 180) / Math.PI;
      expect(degrees / composite.fovDeg).toBeCloseTo(1, 5);
    }
  });

  it('agrees on the light value', () => {
    for (const { tags, composite } of cases) {
      const ev = evOfSettings({
        fNumber: tags.FNumber,
        timeS: tags.ExposureTime as number,
        iso: tags.ISO as number,
      });
      expect(ev).toBeCloseTo(composite.lightValue as number, 6);
    }
  });
});

describe('against values once read from ExifTool', () => {
  // Circle of confusion 43.2666/(scale·1440) mm; here scale 1.
  const circleMm = 43.2666 / 1440;

  it.each([
    { FocalLength: 100, FNumber: 8, SubjectDistance: 0.5, nearM: 0.4952384, farM: 0.5048541 },
    { FocalLength: 100, FNumber: 16, SubjectDistance: 0.2, nearM: 0.1990431, farM: 0.2009661 },
    { FocalLength: 60, FNumber: 22, SubjectDistance: 0.18, nearM: 0.1761194, farM: 0.1840555 },
  ])('f $FocalLength N $FNumber at $SubjectDistance m', ({ nearM, farM, ...tags }) => {
    const found = ends({ ...tags, FocalLengthIn35mmFormat: tags.FocalLength }, circleMm);
    expect(found.nearM).toBeCloseTo(nearM, 6);
    expect(found.farM).toBeCloseTo(farM, 6);
  });

  it('f/8, 1/125 s, ISO 100 is light value 12.965784', () => {
    expect(evOfSettings({ fNumber: 8, timeS: 1 / 125, iso: 100 })).toBeCloseTo(12.965784, 6);
  });

  it('f 100 N 8: endless beyond 41.60251 m and the focal length', () => {
    const at = (SubjectDistance: number) => {
      const tags = { FocalLength: 100, FNumber: 8, FocalLengthIn35mmFormat: 100, SubjectDistance };
      return ends(tags, circleMm).farM;
    };
    expect(at(41.7024)).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(at(41.7027)).toBe(Number.POSITIVE_INFINITY);
  });
});
