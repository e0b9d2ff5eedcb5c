/**
 * A pull of focus through a deep subject. Judged by brute force: the pull is cut into moments and the
 * subject into slices; at each moment the blur of each slice follows from the thin-lens equation and similar
 * triangles at the pupil (OpenStax, University Physics vol. 3, ch. 2), and a slice counts as sharp when it
 * is so at any moment. The subject may stand wherever most of it gets its turn.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const CIRCLE_MM = 0.03;
const NEAR_MM = 380;
const DEPTH_MM = 15;

/** f and m of a 100 mm lens that is 1:1 at 310 mm, with its ring at a distance from the sensor. */
function focusedAt(fromSensorMm: number) {
  const focal = (m: number) => 100 + (310 / 4 - 100) * m;
  let [far, near] = [1e-6, 1];
  for (let step = 0; step < 100; step++) {
    const m = (near + far) / 2;
    if (focal(m) * (2 + m + 1 / m) > fromSensorMm) far = m;
    else near = m;
  }
  return { m: near, f: focal(near) };
}

/** Blur on the sensor of a point at `slice` from it, focused at `focus`, f/N as marked. */
function blurMm(focus: number, slice: number, fNumber: number): number {
  const { m, f } = focusedAt(focus);
  const toPupil = f * (1 + 1 / m);
  const off = slice - focus;
  return (m * (f / fNumber) * Math.abs(off)) / (toPupil + off);
}

/** How much of the subject is never sharp, mm, where it stands best. */
function neverSharpMm(travelMm: number, fNumber: number): number {
  const step = 0.02;
  const sharpAt = (moment: number, slice: number) => blurMm(moment, slice, fNumber) <= CIRCLE_MM;
  // The plane passes all between its ends; what counts beyond them is the moment at that end.
  let [nearest, farthest] = [NEAR_MM, NEAR_MM + travelMm];
  while (sharpAt(NEAR_MM, nearest - step)) nearest -= step;
  while (sharpAt(NEAR_MM + travelMm, farthest + step)) farthest += step;
  for (let moment = NEAR_MM; moment <= NEAR_MM + travelMm; moment += 0.1) {
    let slice = moment;
    while (sharpAt(moment, slice - step)) slice -= step;
    expect(slice).toBeGreaterThanOrEqual(nearest - 2 * step);
  }
  return Math.max(0, DEPTH_MM - (farthest - nearest));
}

const plan = (move: string | null, fNumber: number) =>
  changed(EXAMPLE_PLAN, {
    'subjects/frost-plate/depth': `${DEPTH_MM} mm`,
    'circle-of-confusion': `${CIRCLE_MM} mm`,
    'shots/frost/field': '70 mm',
    'shots/frost/aperture': `f/${fNumber}`,
    'shots/frost/iso': 'auto',
    'shots/frost/take': '{ duration: 20 s }',
    ...(move && { 'shots/frost/move': move }),
    'preflight/once/focus-ends-marked': 'open',
  });

const pull = (from: number, to: number) =>
  `{ kind: focus-pull, from: ${from} mm, to: ${to} mm, duration: 10 s }`;

const short = (text: string) => findingsOf(text).filter(({ rule }) => rule === 'depth-short');

describe('a pull of focus through 15 mm', () => {
  it('that covers them is not told to be short of depth; without it, it is', () => {
    expect(short(plan(null, 5.6))).toHaveLength(1);
    expect(short(plan(pull(NEAR_MM, NEAR_MM + 16), 5.6))).toEqual([]);
    expect(short(plan(pull(NEAR_MM + 16, NEAR_MM), 5.6))).toEqual([]);
  });

  it.each([2, 6, 9, 11, 13, 14])(
    'of %d mm says what never is sharp, as brute force finds it',
    (mm) => {
      for (const fNumber of [4, 5.6, 8]) {
        const never = neverSharpMm(mm, fNumber);
        const found = short(plan(pull(NEAR_MM, NEAR_MM + mm), fNumber));
        const { numbers, what } = found[0] ?? {};
        // A shortage under a twentieth of what is left is none.
        if (never < 0.1 * (DEPTH_MM - mm)) expect(never === 0 ? found : []).toEqual([]);
        else {
          expect(found).toHaveLength(1);
          const { neededMm, depthMm } = numbers as { neededMm: number; depthMm: number };
          expect(neededMm - depthMm).toBeCloseTo(never, 0);
          expect(Math.abs(neededMm - depthMm - never)).toBeLessThan(0.06);
          expect(what).toMatch(/beyond the focus pull/);
        }
      }
    },
  );

  it('leaves no depth to need where it covers the subject, from infinity too', () => {
    const needed = (move: string) =>
      (coreWith(plan(move, 5.6)).figures(PLAN).get('frost')!.depthMm as { needed: number }).needed;
    expect(needed(pull(NEAR_MM, NEAR_MM + 5))).toBeCloseTo(10, 6);
    expect(needed(pull(NEAR_MM, NEAR_MM + 40))).toBe(0);
    expect(needed('{ kind: focus-pull, from: infinity, to: closest }')).toBe(0);
  });
});
