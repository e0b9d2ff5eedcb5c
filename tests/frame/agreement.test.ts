/**
 * Findings and picture never disagree: shares counted from traced frames of random plans against the
 * figures that findings go by.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../../shared/figures/figure.ts';
import { frameView } from '../../shared/figures/flat-mirror.ts';
import { DARK_FIELD } from '../../shared/figures/through.ts';
import { clippedShare } from '../../shared/frame/caption.ts';
import type { Gathered } from '../../shared/frame/gather.ts';
import { type FramePicture, traceFrame } from '../../shared/frame/trace.ts';
import { rimClearedMm } from '../../shared/mirror/least-tilt.ts';
import { shadeOf } from '../../shared/mirror/seen-lit.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { highlightClips } from '../../shared/rules/highlight-clips.ts';
import { each } from '../support/each.ts';
import { changed } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';
import { type LaidOutShot, laidOut, luminanceAt, traced } from './support/traced.ts';

const SIZE = { width: 48, height: 27 };
const MID_GREY = 0.18;

const mean = (shares: Float32Array): number =>
  shares.reduce((sum, share) => sum + share, 0) / shares.length;

const given = <T>(figure: Figure<T>): T | undefined => (figure.known ? figure.value : undefined);

/** Films, turned and lit in all ways. */
const films = fc
  .record({
    tilt: fc.integer({ min: -30, max: 180 }).map((tenths) => tenths / 10),
    axis: fc.constantFrom('level', 'upright'),
    field: fc.integer({ min: 12, max: 90 }),
    aperture: fc.constantFrom('f/4', 'f/5.6', 'f/11', 'f/22'),
    sag: fc.constantFrom(0, 0, 1),
    iso: fc.constantFrom('400', '1600', '25600', 'auto'),
    distance: fc.integer({ min: 150, max: 900 }),
    /** Off the mirrored direction, along the tilt and across it. */
    off: fc.integer({ min: -25, max: 25 }),
    beside: fc.integer({ min: -15, max: 15 }),
    luminance: fc.constantFrom(1000, 1_600_000, 20_000_000),
    size: fc.constantFrom('240 x 120 mm', '90 x 60 mm', '600 x 400 mm'),
    isRound: fc.boolean(),
  })
  .map((of) => ({
    ...of,
    up: of.axis === 'level' ? 2 * of.tilt + of.off : of.beside,
    across: of.axis === 'level' ? of.beside : 2 * of.tilt + of.off,
  }))
  .map((of) =>
    changed(EXAMPLE_PLAN, {
      'shots/skin/tilt': `${of.tilt} deg`,
      'shots/skin/tilt-axis': of.axis,
      'shots/skin/field': `${of.field} mm`,
      'shots/skin/aperture': of.aperture,
      'shots/skin/iso': of.iso,
      'lights/strip/luminance': `${of.luminance} cd/m2`,
      'subjects/soap': `{ kind: film, orientation: upright, size: 160 x 100 mm, sag: ${of.sag} mm }`,
      'lights/strip/at': `{ distance: ${of.distance} mm, elevation: ${of.up} deg, azimuth: ${of.across} deg }`,
      ...(of.isRound
        ? { 'lights/strip/emitting-size': null, 'lights/strip/diameter': '150 mm' }
        : { 'lights/strip/emitting-size': of.size }),
    }),
  );

type Drawn = LaidOutShot & Gathered & { readonly picture: FramePicture };

/** One shot of random plans, as far as it can be drawn; made once for all that is counted in it. */
const drawn = (plans: fc.Arbitrary<string>, shot: string, count: number): readonly Drawn[] =>
  fc.sample(plans, { numRuns: count, seed: 7 }).flatMap((text) => {
    const it = laidOut(text, shot);
    const frame = it && traced(it, SIZE);
    return frame ? [{ ...it, ...frame }] : [];
  });

const FILMS = drawn(films, 'skin', manyRuns(80));
const OTHERS = drawn(
  randomPlan(4).map(({ text }) => text),
  'skin',
  manyRuns(20),
);

const nameOf = ({ bench, scene }: Drawn): string =>
  JSON.stringify({
    tilt: given(bench.tiltRad),
    ...scene.camera,
    lights: scene.shown.map(({ source }) => source),
  });

const law = (shots: readonly Drawn[], check: (shot: Drawn) => void): void =>
  each(shots, check, nameOf);

describe('what is counted from a frame is what the figures say', () => {
  it('of each light alone: the share that it leaves dark, black and dimmed', () => {
    law([...FILMS, ...OTHERS], ({ figures, scene }) => {
      const lost = given(figures.lostByLight);
      const shade = given(figures.shade);
      if (!lost || scene.body.shape !== 'flat') return;
      const { camera } = scene;
      // Rays through the whole pupil blur the film itself, which the figures leave sharp.
      const { surface } = scene.body;
      const slope = Math.hypot(surface.normal[0], surface.normal[1]) / surface.normal[2];
      const depth = (Math.max(camera.widthMm, camera.heightMm) / 2) * slope + 2;
      const blur = (camera.pupilMm * depth) / camera.pupilAtMm / camera.heightMm;
      const tolerance = 0.02 + blur;
      for (const [i, light] of scene.shown.entries()) {
        const share = lost.find((one) => given(one)?.light === light.name);
        const picture = traceFrame(
          {
            ...scene,
            body: { ...scene.body, edge: undefined },
            shown: [light],
            front: undefined,
            inTheWay: [],
          },
          SIZE,
        );
        const dark = 1 - mean(picture.lit);
        const said = share && given(share)?.share;
        if (said === undefined) continue;
        expect(
          Math.abs(dark - said),
          `${light.name} leaves ${dark} dark, not ${said}`,
        ).toBeLessThan(tolerance);
        if (i > 0 || !shade || lost.length > 1) continue;
        const black = picture.lit.filter((lit) => lit === 0).length / picture.lit.length;
        const dim = picture.lit.filter((lit) => lit > 0 && lit < 1).length / picture.lit.length;
        // A pixel that few of its rays see lit may be taken for black, one that many do for lit.
        expect(Math.abs(black - shade.blackShare)).toBeLessThan(tolerance + shade.dimShare / 2);
        expect(Math.abs(dim - shade.dimShare)).toBeLessThan(tolerance + 0.05 + shade.dimShare / 2);
      }
    });
    expect(FILMS.length + OTHERS.length).toBeGreaterThan(manyRuns(80) / 2);
  });

  it('of the lens: whether the film shows it', () => {
    let [shows, clear] = [0, 0];
    law(FILMS, ({ bench, figures, scene, picture }) => {
      const view = given(figures.mirrorView);
      const tilt = given(bench.tiltRad);
      if (!view || tilt === undefined || tilt < 0 || !scene.front) return;
      const cleared = rimClearedMm(view, tilt);
      const alone = traceFrame({ ...scene, shown: [], inTheWay: [] }, SIZE);
      const share = mean(alone.lens);
      // Little of the pupil sees the very edge of the lens, and few rays go there.
      if (cleared + view.pupilMm / 3 < view.rimMm * 0.85) {
        shows += 1;
        expect(share).toBeGreaterThan(0);
      }
      if (cleared > view.rimMm * 1.02) {
        clear += 1;
        expect(share).toBe(0);
        expect(mean(picture.lens)).toBe(0);
      }
    });
    expect(Math.min(shows, clear)).toBeGreaterThan(manyRuns(80) / 10);
  });

  it('of exposure: where a film without a thickness lies, and how much of it is cut off', () => {
    let [cut, whole] = [0, 0];
    law(FILMS, ({ figures, picture, clipAt }) => {
      const error = given(figures.exposureErrorStops);
      if (error === undefined) return;
      const level = MID_GREY * 2 ** error;
      const lit = [...picture.lit.keys()].filter((index) => picture.lit[index] === 1);
      if (lit.length === 0) return;
      const bright = lit.map((index) => luminanceAt(picture, index));
      const average = bright.reduce((sum, value) => sum + value, 0) / bright.length;
      // The film returns a little more or less at other angles than in its middle.
      expect(average / level).toBeGreaterThan(0.93);
      expect(average / level).toBeLessThan(1.07);
      // Usual bodies record 3.5 stops over mid-grey (assumptions).
      expect(clipAt).toBeCloseTo(MID_GREY * 2 ** 3.5, 6);
      if (Math.abs(level / clipAt - 1) < 0.1) return;
      const share = bright.filter((value) => value > clipAt).length / bright.length;
      expect(share).toBe(level > clipAt ? 1 : 0);
      if (level > clipAt) cut += 1;
      else whole += 1;
    });
    expect(Math.min(cut, whole)).toBeGreaterThan(manyRuns(80) / 40);
  });

  it('of a matt subject: the light in its middle, and how uneven it is', () => {
    const matt = fc
      .record({
        tilt: fc.integer({ min: 0, max: 40 }),
        distance: fc.integer({ min: 200, max: 600 }),
        iso: fc.constantFrom('100', '1250', 'auto'),
        light: fc.constantFrom('[panel]', '[panel, bulb]'),
      })
      .map((of) =>
        changed(EXAMPLE_PLAN, {
          'shots/frost/tilt': `${of.tilt} deg`,
          'shots/frost/iso': of.iso,
          'shots/frost/light': of.light,
          'shots/frost/white-balance': 'auto',
          'lights/bulb/colour-temperature': '5600 K',
          'lights/panel/at': `{ distance: ${of.distance} mm, elevation: 40 deg }`,
        }),
      );
    const shots = drawn(matt, 'frost', manyRuns(20));
    law(shots, ({ figures, scene, picture }) => {
      const error = given(figures.exposureErrorStops);
      const uneven = given(figures.unevennessStops);
      if (error === undefined || uneven === undefined) throw new Error('no exposure');
      const all = Array.from({ length: SIZE.width * SIZE.height }, (_, i) =>
        luminanceAt(picture, i),
      );
      const middle = all[Math.floor(all.length / 2)]!;
      expect(Math.log2(middle / (MID_GREY * 2 ** error))).toBeCloseTo(0, 1);
      // The outermost pixels lie half a pixel within the frame.
      const counted = Math.log2(Math.max(...all) / Math.min(...all));
      expect(Math.abs(counted - uneven)).toBeLessThan(0.02 + uneven * (3 / SIZE.height));
      expect(scene.shown).toEqual([]);
    });
    expect(shots.length).toBe(manyRuns(20));
  });

  it('of gloss: the lamp is burnt out where a finding says so, over the share that shows it', () => {
    const glossy = fc
      .record({
        tilt: fc.integer({ min: 0, max: 25 }),
        distance: fc.integer({ min: 250, max: 600 }),
        off: fc.integer({ min: -6, max: 6 }),
        size: fc.constantFrom('300 x 200 mm', '90 x 60 mm', '60 x 40 mm'),
        surface: fc.constantFrom('reflectance: 60 %', 'refractive-index: 1.5', 'reflectance: 20 %'),
        records: fc.constantFrom('2.5 stops', '4 stops', '6 stops'),
        iso: fc.constantFrom('400', '1250'),
      })
      .map((of) =>
        changed(EXAMPLE_PLAN, {
          'kit/bodies/body-a/highlight-latitude': of.records,
          'subjects/frost-plate': `{ kind: solid, size: 200 x 150 mm, depth: 1 mm, finish: gloss, ${of.surface} }`,
          'shots/frost/tilt': `${of.tilt} deg`,
          'shots/frost/iso': of.iso,
          'lights/panel/emitting-size': of.size,
          'lights/panel/at': `{ distance: ${of.distance} mm, elevation: ${2 * of.tilt + of.off} deg }`,
        }),
      );
    let [burnt, held] = [0, 0];
    law(drawn(glossy, 'frost', manyRuns(40)), ({ bench, figures, scene, picture, clipAt }) => {
      const image = given(figures.highlight);
      const records = given(figures.highlightLatitudeStops);
      const frame = frameView(bench, figures);
      const [light] = scene.shown;
      if (!image || records === undefined || !frame.known || !light || scene.body.shape !== 'flat')
        throw new Error('no highlight');
      const over = image.stops - records;
      // The plate's own light lies over the image, and glass returns more from aside.
      if (Math.abs(over) < 0.4) return;
      const found = highlightClips.check({ bench, figures } as Parameters<
        typeof highlightClips.check
      >[0]);
      expect(found.length).toBe(over > 0 ? 1 : 0);
      const counted = clippedShare(picture, clipAt);
      const { blackShare, dimShare } = shadeOf(frame.value, scene.body.surface, light.source);
      const most = found.length === 0 ? 0 : 1 - blackShare;
      expect(counted).toBeLessThanOrEqual(most === 0 ? 0 : most + 0.03);
      expect(counted).toBeGreaterThanOrEqual(most - dimShare - 0.03);
      if (counted > 0) burnt += 1;
      if (found.length === 0 && mean(picture.lit) > 0) held += 1;
    });
    expect(Math.min(burnt, held)).toBeGreaterThan(manyRuns(40) / 10);
  });

  it('of a light behind: the share of the frame that it fills, and how bright it is', () => {
    const backlit = fc
      .record({
        distance: fc.integer({ min: 40, max: 200 }),
        aside: fc.integer({ min: 0, max: 20 }),
        size: fc.constantFrom('240 x 160 mm', '240 x 160 mm', '40 x 30 mm', '60 x 40 mm'),
        luminance: fc.constantFrom(100, 3000),
      })
      .map((of) =>
        changed(EXAMPLE_PLAN, {
          'subjects/frost-plate':
            '{ kind: solid, size: 200 x 150 mm, depth: 1 mm, finish: matt, transmittance: 70 % }',
          'lights/panel': `{ kind: led, emitting-size: ${of.size}, at: { distance: ${of.distance} mm, azimuth: ${180 - of.aside} deg }, colour-temperature: 5600 K, luminance: ${of.luminance} cd/m2 }`,
        }),
      );
    let [partly, fully] = [0, 0];
    law(drawn(backlit, 'frost', manyRuns(25)), ({ figures, picture }) => {
      const share = given(figures.backlight)?.share;
      if (share === undefined) throw new Error('no light behind');
      const lit = mean(picture.lit);
      if (share < DARK_FIELD) {
        expect(lit).toBe(0);
        return;
      }
      expect(Math.abs(lit - share)).toBeLessThan(0.03);
      if (share < 0.95) partly += 1;
      else fully += 1;
      const full = [...picture.lit.keys()].filter((index) => picture.lit[index] === 1);
      const error = given(figures.exposureErrorStops);
      if (full.length === 0 || error === undefined) return;
      expect(luminanceAt(picture, full[0]!) / (MID_GREY * 2 ** error)).toBeCloseTo(1, 3);
    });
    expect(Math.min(partly, fully)).toBeGreaterThan(manyRuns(25) / 10);
  });

  it('of a light in the way: the share that it hides', () => {
    let hiding = 0;
    law(FILMS, ({ figures, picture }) => {
      const way = given(figures.lightInTheWay);
      if (!way) return;
      // The figure is by the pupil's middle alone.
      const counted = mean(picture.hidden);
      if (way.hiddenShare === 0) expect(counted).toBeLessThan(0.2);
      if (way.hiddenShare > 0) hiding += 1;
      if (way.hiddenShare === 1) expect(counted).toBeGreaterThan(0.9);
    });
    expect(hiding).toBeGreaterThan(0);
  });
});
