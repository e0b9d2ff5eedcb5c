/**
 * Between the stated bounds lies what every corner gives: all inputs at an end at once, in every
 * combination, laid out and worked out again.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Bounds, UncertainShot } from '../../shared/figures/uncertain.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { NUMBERS } from '../support/numbers.ts';
import { changed } from '../support/plans.ts';
import { benchPlan, uncertainPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';
import { uncertainIn } from '../support/uncertain.ts';

/** More inputs than that stay in their middle. */
const MOST = 6;
/** So many have their middles tried among the corners too. */
const FEW = 4;
/** Of the width that is stated. */
const TOLERANCE = 0.05;

/** Every combination of ends: 2^n, or 3^n with the middles; of a lens that was measured first. */
function* cornersOf({ widths }: UncertainShot): Generator<readonly number[]> {
  const stands = widths.length <= FEW ? [-1, 0, 1] : [-1, 1];
  const all = [...widths.keys()];
  const moved = [
    ...all.filter((index) => widths[index]!.direction),
    ...all.filter((index) => !widths[index]!.direction),
  ].slice(0, MOST);
  for (let corner = 0; corner < stands.length ** moved.length; corner++)
    yield widths.map((_, index) => {
      const place = moved.indexOf(index);
      return place < 0 ? 0 : stands[Math.floor(corner / stands.length ** place) % stands.length]!;
    });
}

const slackOf = ({ low, high }: Bounds): number =>
  Math.max(TOLERANCE * (high - low), 1e-9 * Math.max(Math.abs(low), Math.abs(high)), 1e-12);

/** What lies outside the bounds that are stated, in words. */
function outside(shot: UncertainShot): string[] {
  const found: string[] = [];
  const stated = NUMBERS.flatMap(([name, pick]) => {
    const middle = pick(shot.middle.figures);
    if (!middle.known) return [];
    const exact = { low: middle.value, high: middle.value, widenedBy: [] };
    return [[name, pick, shot.bounds(pick) ?? exact] as const];
  });
  for (const corner of cornersOf(shot)) {
    const { figures } = shot.at(corner);
    for (const [name, pick, bounds] of stated) {
      const there = pick(figures);
      const where = `${name} at ${corner.join(' ')} of ${shot.widths.map(({ key }) => key)}`;
      if (!there.known) {
        if (!bounds.widenedBy.some(({ mayBeImpossible }) => mayBeImpossible))
          found.push(`${where}: impossible, which nothing says`);
      } else if (
        there.value < bounds.low - slackOf(bounds) ||
        there.value > bounds.high + slackOf(bounds)
      )
        found.push(`${where}: ${there.value} is not in ${bounds.low} to ${bounds.high}`);
    }
  }
  return found;
}

it('no corner lies outside, for any number', () => {
  const plans = fc.sample(uncertainPlan(), { seed: 99, numRuns: manyRuns(50) });
  const wide = new Set<string>();
  each(
    plans,
    ({ text }) => {
      for (const shot of uncertainIn(text).values()) {
        expect(outside(shot)).toEqual([]);
        for (const [name, pick] of NUMBERS) if (shot.bounds(pick)) wide.add(name);
      }
    },
    ({ change }) => JSON.stringify(change),
  );
  // The law is tried on most of what there is.
  expect(wide.size).toBeGreaterThan(35);
});

/** A lens with a bench stands for its widths by axes, all of which move together. */
it('no corner lies outside where a lens was measured', () => {
  const plans = fc.sample(benchPlan(), { seed: 7, numRuns: manyRuns(5) });
  let fitted = 0;
  each(
    plans,
    ({ text }) => {
      for (const shot of uncertainIn(text).values()) {
        expect(outside(shot)).toEqual([]);
        if (shot.widths.some(({ direction }) => direction)) fitted++;
      }
    },
    ({ change }) => JSON.stringify(change),
  );
  expect(fitted).toBeGreaterThanOrEqual(plans.length);
});

/** What the middle hides: the frame is lit there, and how dark it gets goes by lamp and lens together. */
it('no corner lies outside where the dark part of a frame is 0 in the middle', () => {
  const lamps = fc.sample(
    fc.record({
      up: fc.integer({ min: 9, max: 12 }),
      higher: fc.integer({ min: 4, max: 9 }),
      left: fc.integer({ min: 2, max: 8 }),
      right: fc.integer({ min: 5, max: 12 }),
    }),
    { seed: 12, numRuns: manyRuns(2) },
  );
  let dark = 0;
  each(
    [{ up: 10, higher: 8, left: 5, right: 10 }, ...lamps],
    ({ up, higher, left, right }) => {
      const text = changed(EXAMPLE_PLAN, {
        'kit/lenses/long-200/closest': '{ from-sensor: 0.85 m }',
        'lights/strip/at': `{ distance: 300 mm, elevation: ${up} to ${up + higher} deg, azimuth: ${-left} to ${right} deg }`,
      });
      const shot = uncertainIn(text).get('skin')!;
      expect(outside(shot)).toEqual([]);
      const [, dimShare] = NUMBERS.find(([name]) => name === 'dimShare')!;
      if ((shot.bounds(dimShare)?.high ?? 0) > 0.05) dark++;
    },
    (lamp) => JSON.stringify(lamp),
  );
  expect(dark).toBeGreaterThan(0);
});
