/**
 * A focus stack. Its step is held to the close-up depth of field of S. F. Ray, Applied Photographic Optics
 * ("Depth of field", from memory): T = 2·c·N·(1 + m/p)/m² with pupil ratio p; and to what photographers read
 * off tables of it: 0.96 mm at 1:1, f/8 and c = 0.03 mm (from memory). An overlap of 20 to 30 % is common
 * practice. That the frames leave nothing out is judged by brute force: the subject is cut into slices, and the
 * blur of each in every frame follows from the thin-lens equation and similar triangles at the pupil (OpenStax,
 * University Physics vol. 3, ch. 2).
 */
import { describe, expect, it } from 'vitest';
import { depthByFNumber } from '../../shared/optics/depth.ts';
import { settableStepMm, stackFrames, stackStepMm } from '../../shared/optics/focus-stack.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const CIRCLE_MM = 0.03;
const WIDTH_MM = 36;
const DEPTH_MM = 12;

const plan = (stack: string, fieldMm: number, fNumber: number): string =>
  changed(EXAMPLE_PLAN, {
    'subjects/frost-plate/depth': `${DEPTH_MM} mm`,
    'circle-of-confusion': `${CIRCLE_MM} mm`,
    'shots/frost/field': `${fieldMm} mm`,
    'shots/frost/aperture': `f/${fNumber}`,
    'shots/frost/iso': 'auto',
    'shots/frost/stack': stack,
    'preflight/once/stack-ends-checked': 'open',
  });

const figuresOf = (text: string) =>
  coreWith(text).figures(PLAN).get('frost')! as unknown as Record<string, number>;

/** Ray's close-up form for p = 1. */
const ray = (m: number, fNumber: number): number => (2 * CIRCLE_MM * fNumber * (1 + m)) / m ** 2;

/** Above this the Airy disk passes the circle of confusion and the depth is no longer Ray's. */
const CASES = [
  [36, 4],
  [36, 8],
  [60, 5.6],
  [60, 11],
  [90, 8],
] as const;

// S. F. Ray, Applied Photographic Optics, from memory; the counts are arithmetic by hand.
describe('the step of a stack', () => {
  it('at 1:1 and f/8 is 0.96 mm of depth without the overlap', () => {
    expect(ray(1, 8)).toBeCloseTo(0.96, 9);
    const { totalMm } = depthByFNumber({
      blurMm: CIRCLE_MM,
      magnification: 1,
      effectiveFNumber: 16,
      pupilDistanceMm: 200,
    });
    expect(stackStepMm(totalMm, 0.3)).toBeCloseTo(0.96 * 0.7, 3);
    expect(stackStepMm(totalMm, 0.2)).toBeCloseTo(0.96 * 0.8, 3);
  });

  it('is Ray’s depth without the overlap, as the plan has it or 30 %', () => {
    each(CASES, ([field, fNumber]) => {
      const depth = ray(WIDTH_MM / field, fNumber);
      const usual = figuresOf(plan('{ with: rail, settle: 2 s }', field, fNumber)).stackStepMm!;
      expect(Math.abs(usual / (0.7 * depth) - 1)).toBeLessThan(1e-3);
      const own = figuresOf(plan('{ with: rail, overlap: 20 %, settle: 2 s }', field, fNumber));
      expect(Math.abs(own.stackStepMm! / (0.8 * depth) - 1)).toBeLessThan(1e-3);
    });
  });

  it('and its frames and time follow by hand', () => {
    // 0.7·2.1333 mm at m = 0.6, f/8: 12 / 1.4933 = 8.04, so 9 steps and 10 frames of 2 s + 1/50 s.
    const found = figuresOf(plan('{ with: rail, settle: 2 s }', 60, 8));
    expect(found.stackStepMm).toBeCloseTo(1.4933, 3);
    expect(found.stackFrames).toBe(10);
    expect(found.stackTravelMm).toBeCloseTo(9 * 1.4933, 2);
    expect(found.stackTimeS).toBeCloseTo(10 * 2.02, 9);
  });

  it('is rounded down to what a rail can be set to', () => {
    expect(settableStepMm(1.4933, 0.05)).toBeCloseTo(1.45, 9);
    expect(settableStepMm(0.3, 0.1)).toBeCloseTo(0.3, 9);
    expect(settableStepMm(0.03, 0.1)).toBeCloseTo(0.1, 9);
    expect(stackFrames(12, 1.45)).toBe(10);
    expect(stackFrames(0.9, 0.3)).toBe(4);
    expect(stackFrames(0, 0.3)).toBe(1);
  });
});

/** f and m of the example's lens, 1:1 at 310 mm, with its ring at a distance from the sensor. */
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

/** Blur on the sensor of a point `off` behind the plane of focus. */
function blurMm({ m, f }: { m: number; f: number }, off: number, fNumber: number): number {
  const toPupil = f * (1 + 1 / m);
  return (m * (f / fNumber) * Math.abs(off)) / (toPupil + off);
}

/** Where the ring stands for m, by halving. */
function placeFor(m: number): number {
  let [near, far] = [310, 5000];
  for (let step = 0; step < 100; step++) {
    const place = (near + far) / 2;
    if (focusedAt(place).m > m) near = place;
    else far = place;
  }
  return near;
}

/** How many slices of the subject no frame has sharp. */
function softSlices(
  focusAt: readonly number[],
  lensAt: (frame: number) => { m: number; f: number },
  fNumber: number,
): number {
  let soft = 0;
  for (let slice = 0; slice <= DEPTH_MM; slice += 0.01) {
    const isSharp = focusAt.some(
      (place, frame) => blurMm(lensAt(frame), slice - place, fNumber) <= CIRCLE_MM,
    );
    if (!isSharp) soft++;
  }
  return soft;
}

/** "Behind the first" of each frame as the sheet prints it, mm. */
function printed(text: string): readonly number[] {
  const { focus } = coreWith(text).sheet(PLAN, { isWrittenOn: true }).shots[0]!;
  return focus!.table.rows.map((row) => Number.parseFloat(String(row.at(-1))));
}

// Thin-lens equation: OpenStax, University Physics vol. 3, ch. 2.
describe('the frames of a stack', () => {
  it('by rail leave no slice of 12 mm soft, and without every second one they do', () => {
    each(CASES, ([field, fNumber]) => {
      const text = plan('{ with: rail, settle: 2 s }', field, fNumber);
      const { stackStepMm: step = 0, stackFrames: frames = 0 } = figuresOf(text);
      const lens = focusedAt(placeFor(WIDTH_MM / field));
      const places = Array.from({ length: frames }, (_, index) => index * step);
      expect(softSlices(places, () => lens, fNumber)).toBe(0);
      const every2nd = places.filter((_, index) => index % 2 === 0);
      expect(softSlices(every2nd, () => lens, fNumber)).toBeGreaterThan(0);
      // With 30 % overlap a step more than 1/0.7 as long leaves gaps: the step is no shorter than it has to be.
      const wide = places.map((place) => place * 1.5);
      expect(softSlices(wide, () => lens, fNumber)).toBeGreaterThan(0);
    });
  });

  it('by ring, as the sheet prints them, leave none soft either', () => {
    each([CASES[2], CASES[3], CASES[4]], ([field, fNumber]) => {
      const places = printed(plan('{ with: ring, settle: 2 s }', field, fNumber));
      expect(places[0]).toBe(0);
      expect(places.at(-1)).toBeGreaterThanOrEqual(DEPTH_MM);
      expect(places.at(-2)).toBeLessThan(DEPTH_MM);
      const first = placeFor(WIDTH_MM / field);
      const lenses = places.map((place) => focusedAt(first + place));
      expect(softSlices(places, (frame) => lenses[frame]!, fNumber)).toBe(0);
      // Depth grows on the way, and with it the steps.
      const steps = places.slice(1).map((place, index) => place - places[index]!);
      expect(steps.at(-1)!).toBeGreaterThan(steps[0]!);
    });
  });
});
