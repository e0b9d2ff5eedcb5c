/**
 * How often the truth lies between the stated bounds: what nobody gave is drawn between the ends of
 * what is assumed of it, written into the plan as if it had been measured, and worked out.
 */
import { expect, it } from 'vitest';
import type { UncertainShot } from '../../shared/figures/uncertain.ts';
import { type Random, randomFrom } from '../published/support/random.ts';
import { each } from '../support/each.ts';
import { given, inPlan } from '../support/narrowed.ts';
import { NUMBERS } from '../support/numbers.ts';
import { manyRuns } from '../support/runs.ts';
import { SHEET_PLANS } from '../support/sheet-plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

const DRAWS = 500;
const LEAST = 0.99;

/** The truth about one shot: every input of it somewhere between its ends. */
function drawn(text: string, shot: UncertainShot, random: Random) {
  const known = new Set(inPlan(shot));
  const stands = new Map(shot.widths.map((width) => [width.key + width.of, random.between(-1, 1)]));
  const standOf = ({ key, of }: (typeof shot.widths)[number]): number => stands.get(key + of)!;
  const measured = [...known].reduce(
    (now, width) => given(now, width, standOf(width)) ?? now,
    text,
  );
  const truth = uncertainIn(measured).get(shot.middle.bench.shot)!;
  // What no key of a plan says is left to be drawn: constants of meters, the iris.
  expect(truth.widths.every(({ at, middle }) => at === null || middle === null)).toBe(true);
  return truth.at(truth.widths.map((width) => (width.middle === null ? 1 : standOf(width))))
    .figures;
}

it('the truth lies between the bounds, of every number, in 99 of 100 draws', () => {
  const random = randomFrom(41);
  const tally = new Map<string, { inside: number; outside: number }>();
  const plans = Object.values(SHEET_PLANS).map((text) => [text, uncertainIn(text)] as const);
  for (let draw = 0; draw < manyRuns(DRAWS); draw++) {
    const [text, shots] = plans[draw % plans.length]!;
    const shot = [...shots.values()][Math.floor(draw / plans.length) % shots.size]!;
    const figures = drawn(text, shot, random);
    for (const [name, pick] of NUMBERS) {
      const [middle, there] = [pick(shot.middle.figures), pick(figures)];
      if (!middle.known) continue;
      const bounds = shot.bounds(pick) ?? { low: middle.value, high: middle.value, widenedBy: [] };
      const rounding = 1e-9 * Math.abs(middle.value) + 1e-12;
      const isInside = there.known
        ? there.value >= bounds.low - rounding && there.value <= bounds.high + rounding
        : bounds.widenedBy.some(({ mayBeImpossible }) => mayBeImpossible);
      const one = tally.get(name) ?? { inside: 0, outside: 0 };
      one[isInside ? 'inside' : 'outside']++;
      tally.set(name, one);
    }
  }
  each(
    [...tally],
    ([, { inside, outside }]) => expect(inside / (inside + outside)).toBeGreaterThanOrEqual(LEAST),
    ([name]) => name,
  );
  expect(tally.size).toBeGreaterThan(40);
});
