/**
 * What a shutter leaves of a lamp's pulsing, against the light summed over the open time here, apart
 * from the code: sines, pulses of any length, steps of any course, at the worst moment to begin.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { messageOf } from '../../shared/api/located.ts';
import { flickerResidual, mostFlicker } from '../../shared/exposure/flicker.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

/** A cycle of light in equal steps, each at its level. */
type Course = readonly number[];

const STEPS = 400;

const sine = (depth: number): Course =>
  Array.from({ length: STEPS }, (_, i) => 1 + depth * Math.sin((2 * Math.PI * (i + 0.5)) / STEPS));

/** On for a share of the cycle, and at `low` of that level for the rest. */
const pulse = (duty: number, low: number): Course => {
  const on = Math.max(1, Math.round(duty * STEPS));
  return Array.from({ length: STEPS }, (_, i) => (i < on ? 1 : low));
};

/** Half of what exposures of `open` steps differ by over all moments to begin, over their mean. */
function swing(course: Course, open: number): number {
  const mean = course.reduce((sum, level) => sum + level, 0) / STEPS;
  let light = 0;
  for (let i = 0; i < open; i += 1) light += course[i % STEPS] as number;
  let [least, most] = [light, light];
  for (let begin = 0; begin < STEPS; begin += 1) {
    light += (course[(begin + open) % STEPS] as number) - (course[begin] as number);
    least = Math.min(least, light);
    most = Math.max(most, light);
  }
  return (most - least) / 2 / (mean * open);
}

/** (most − least) / (most + least) of the light itself. */
const depthOf = (course: Course): number => {
  const [least, most] = [Math.min(...course), Math.max(...course)];
  return (most - least) / (most + least);
};

const HZ = 100;
const seconds = (open: number): number => open / STEPS / HZ;

const openings = fc.integer({ min: STEPS / 2, max: 12 * STEPS });
const isNearWhole = (open: number): boolean => {
  const rest = Math.abs(open / STEPS - Math.round(open / STEPS));
  return rest <= (0.002 * open) / STEPS;
};

// Brute force: the light summed over the open time, at the worst moment to begin.
describe('the most that any waveform leaves', () => {
  it('is more than sines, pulses and random courses leave, at any shutter time', () => {
    const courses: fc.Arbitrary<Course> = fc.oneof(
      fc.double({ min: 0, max: 1, noNaN: true }).map(sine),
      fc
        .tuple(
          fc.double({ min: 0.002, max: 0.9, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }),
        )
        .map(([duty, low]) => pulse(duty, low)),
      fc
        .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 20 })
        .map((levels) =>
          Array.from(
            { length: STEPS },
            (_, i) => 0.01 + (levels[Math.floor((i * levels.length) / STEPS)] as number),
          ),
        ),
    );
    fc.assert(
      fc.property(courses, openings, (course, open) => {
        fc.pre(!isNearWhole(open));
        const found = swing(course, open);
        expect(found).toBeLessThanOrEqual(mostFlicker(HZ, seconds(open)) + 1e-9);
        expect(found).toBeLessThanOrEqual(mostFlicker(HZ, seconds(open), depthOf(course)) + 1e-9);
      }),
      { numRuns: 400 },
    );
  });

  it('is what the worst pulse leaves: 1/(2N) where the light goes out, less where it doesn’t', () => {
    fc.assert(
      fc.property(openings, fc.double({ min: 0, max: 0.9, noNaN: true }), (open, low) => {
        fc.pre(!isNearWhole(open));
        const rest = Math.abs(open / STEPS - Math.round(open / STEPS));
        const course = pulse(rest, low);
        expect(mostFlicker(HZ, seconds(open), depthOf(course))).toBeCloseTo(swing(course, open), 6);
        if (low === 0) expect(swing(course, open)).toBeCloseTo(STEPS / (2 * open), 9);
      }),
    );
    // 1/80 s of a lamp at 100 Hz is one cycle and a quarter.
    expect(mostFlicker(100, 1 / 80)).toBeCloseTo(1 / 2.5, 12);
    expect(flickerResidual(100, 1 / 80)).toBeCloseTo(Math.SQRT1_2 / (1.25 * Math.PI), 12);
  });

  it('is nothing over whole cycles, of any course', () => {
    for (const cycles of [1, 2, 3, 8])
      for (const course of [sine(1), pulse(0.01, 0), pulse(0.3, 0.5)]) {
        expect(swing(course, cycles * STEPS)).toBeLessThan(1e-9);
        expect(mostFlicker(HZ, cycles / HZ)).toBeLessThan(1e-9);
      }
  });
});

describe('a lamp of a plan', () => {
  const flicker = (change: Readonly<Record<string, string>>) => {
    const plan = changed(EXAMPLE_PLAN, { 'shots/frost/iso': 'auto', ...change });
    const core = coreWith(plan);
    const { flickerResidual: left } = core.figures(PLAN).get('frost') as unknown as {
      flickerResidual: number | null;
    };
    const found = core.findings(PLAN).filter(({ rule }) => rule === 'lamp-flicker');
    return { left, what: found.map(messageOf).join(' ') };
  };
  const bulb = { 'shots/frost/light': '[bulb]' };
  const tube = { ...bulb, 'lights/bulb/kind': 'fluorescent' };
  const led = { 'lights/panel/modulation': '100 Hz' };

  it.each(['1/50 s', '1/100 s', '180 deg', '90 deg'])(
    'on 50 Hz mains is safe at %s, whatever it is',
    (shutter) => {
      for (const lamp of [bulb, tube, led, { ...led, 'lights/panel/waveform': 'pulsed' }])
        expect(flicker({ ...lamp, 'shots/frost/shutter': shutter })).toEqual({
          left: expect.closeTo(0, 9),
          what: '',
        });
    },
  );

  it('is judged as a sine where it is a filament, or stated as one', () => {
    const at = { 'shots/frost/shutter': '1/48 s' };
    const left = swing(sine(1), Math.round((100 / 48) * STEPS));
    expect(flicker({ ...bulb, ...at }).left).toBeCloseTo(left, 2);
    expect(flicker({ ...tube, ...at, 'lights/bulb/waveform': 'sine' }).left).toBeCloseTo(left, 2);
  });

  it('is judged by pulses where it is stated so, and by the most of all where nothing is', () => {
    const at = { 'shots/frost/shutter': '1/48 s' };
    const pulses = flicker({ ...led, ...at, 'lights/panel/waveform': 'pulsed' });
    expect(pulses.left).toBeCloseTo(48 / 200, 9);
    expect(pulses.what).toContain('leaves 24% flicker');
    const unknown = flicker({ ...tube, ...at });
    expect(unknown.left).toBeCloseTo(48 / 200, 9);
    expect(unknown.what).toContain('leaves up to 24% flicker');
    expect(flicker({ ...led, ...at, 'lights/panel/modulation-depth': '10 %' }).left).toBeLessThan(
      0.01,
    );
  });

  it('is as good as safe where the rate is 1000/1001 of a round one', () => {
    // Common practice: 29.97 frames at 180° under lamps on 60 Hz mains.
    expect(mostFlicker(120, 1001 / 60_000)).toBeLessThan(0.002);
  });
});
