/**
 * How unevenly lamps light the frame: against their faces summed over small pieces, at places over
 * the frame (Lambert, Photometria), and against the cos⁴ law of a small lamp square before the
 * frame (e.g. Kingslake, Optics in Photography).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { type SummedFace, summedWeight } from './support/summed-face.ts';

const WIDTH = 60;
const HEIGHT = (60 * 20.25) / 36;

const FROST = 'shots/frost/';

const figuresWith = (change: Readonly<Record<string, string | null>>) =>
  coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('frost')!;

const lampText = (face: SummedFace, bright: string): string =>
  `{ kind: led, emitting-size: ${face.width} x ${face.height} mm, at: { distance: ${face.distance} mm, elevation: ${face.upDeg} deg, azimuth: ${face.acrossDeg} deg }, modulation: none, ${bright} }`;

/** Brightest over darkest place of the frame or of a part of it, stops; the plane leans back by `tiltDeg`. */
function summedStops(
  faces: readonly (readonly [SummedFace, luminance: number])[],
  tiltDeg = 0,
  [width, height] = [WIDTH, HEIGHT],
): number {
  const tilt = (tiltDeg * Math.PI) / 180;
  const steps = Array.from({ length: 13 }, (_, step) => step / 12 - 0.5);
  const given = steps.flatMap((x) =>
    steps.map((y) => {
      // Seen from afar: along the lens axis onto the plane.
      const at = [x * width, y * height, -y * height * Math.tan(tilt)] as const;
      return faces.reduce(
        (sum, [face, luminance]) =>
          sum + luminance * summedWeight(face, [0, Math.sin(tilt), Math.cos(tilt)], at, 40),
        0,
      );
    }),
  );
  return Math.log2(Math.max(...given) / Math.min(...given));
}

const face: fc.Arbitrary<SummedFace> = fc.record({
  width: fc.integer({ min: 40, max: 400 }),
  height: fc.integer({ min: 40, max: 300 }),
  distance: fc.integer({ min: 150, max: 1500 }),
  upDeg: fc.integer({ min: -40, max: 45 }),
  acrossDeg: fc.integer({ min: -40, max: 40 }),
});

// Faces summed piece by piece, by brute force, and the cos⁴ law (R. Kingslake, Optics in Photography).
describe('unevenness over the frame', () => {
  it('is what one lamp’s face comes to, place by place, however bright', () => {
    fc.assert(
      fc.property(face, fc.integer({ min: -10, max: 10 }), (lamp, tiltDeg) => {
        const { unevennessStops } = figuresWith({
          'lights/panel': lampText(lamp, 'illuminance: 900 lx'),
          [`${FROST}tilt`]: `${tiltDeg} deg`,
        });
        const off = (unevennessStops as number) - summedStops([[lamp, 1]], tiltDeg);
        expect(Math.abs(off)).toBeLessThan(0.02);
      }),
      { numRuns: manyRuns(12) },
    );
  }, 3_600_000);

  it('weighs two lamps by how bright they are, dimmed as the shot says', () => {
    fc.assert(
      fc.property(face, face, fc.integer({ min: 1, max: 30 }), (one, other, times) => {
        const { unevennessStops } = figuresWith({
          'lights/panel': lampText(one, 'luminance: 1000 cd/m2'),
          'lights/bulb': lampText(other, `luminance: ${2000 * times} cd/m2`),
          [`${FROST}light`]: '[panel, bulb]',
          [`${FROST}relight`]: '{ bulb: { dimmed: 50 % } }',
        });
        const expected = summedStops([
          [one, 1],
          [other, times],
        ]);
        expect(Math.abs((unevennessStops as number) - expected)).toBeLessThan(0.02);
      }),
      { numRuns: manyRuns(4) },
    );
  }, 3_600_000);

  it('falls off as cos⁴ under a small lamp square before the frame', () => {
    const lamp = { width: 2, height: 2, distance: 200, upDeg: 0, acrossDeg: 0 };
    const { unevennessStops } = figuresWith({
      'lights/panel': lampText(lamp, 'illuminance: 900 lx'),
    });
    const corner = Math.atan(Math.hypot(WIDTH, HEIGHT) / 2 / 200);
    expect(unevennessStops).toBeCloseTo(-4 * Math.log2(Math.cos(corner)), 3);
  });

  // A stem or a drop takes a part of the frame; how light falls beside it shows nowhere.
  it('is that of the subject where it is smaller than the frame', () => {
    const lamp = { width: 60, height: 60, distance: 200, upDeg: 0, acrossDeg: -50 };
    const stopsOf = (subject: string, tiltDeg = 0): number =>
      figuresWith({
        'lights/panel': lampText(lamp, 'illuminance: 900 lx'),
        'subjects/frost-plate': `{ kind: solid, depth: 1.5 mm, finish: matt, ${subject} }`,
        [`${FROST}tilt`]: `${tiltDeg} deg`,
      }).unevennessStops as number;
    const wide = summedStops([[lamp, 1]]);
    expect(stopsOf('size: 200 x 150 mm')).toBeCloseTo(wide, 1);
    const stem = stopsOf('size: 4 x 150 mm');
    expect(stem).toBeCloseTo(summedStops([[lamp, 1]], 0, [4, HEIGHT]), 1);
    expect(stem).toBeLessThan(wide / 4);
    // Of a round one the widest place counts, and no corner of the square around it.
    const across = summedStops([[lamp, 1]], 0, [20, 0]);
    expect(stopsOf('diameter: 20 mm')).toBeCloseTo(across, 1);
    const leaning = summedStops([[lamp, 1]], 60, [4, 20 * Math.cos(Math.PI / 3)]);
    expect(stopsOf('size: 4 x 20 mm', 60)).toBeCloseTo(leaning, 1);
  });

  it('grows as a lamp comes nearer, and is none on what shows the lamp', () => {
    const at = (distance: number) => ({
      [`${FROST}relight`]: `{ panel: { at: { distance: ${distance} mm } } }`,
    });
    const [far, near] = [800, 200].map(
      (distance) => figuresWith(at(distance)).unevennessStops as number,
    );
    expect(near!).toBeGreaterThan(2 * far!);
    const film = '{ kind: film, orientation: upright, size: 160 x 100 mm, lifetime: 40 s }';
    expect(figuresWith({ ...at(200), 'subjects/frost-plate': film }).unevennessStops).toBe(0);
  });

  it('is not guessed of a lamp without a size', () => {
    const { unevennessStops, notKnown } = figuresWith({ 'lights/panel/emitting-size': null });
    expect(unevennessStops).toBeNull();
    expect(notKnown.unevennessStops).toContain('emitting-size');
  });
});
