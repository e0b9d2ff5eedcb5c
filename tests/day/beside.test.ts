/**
 * Shots beside a time-lapse that runs by itself: the order of the day against every other order
 * (brute force, with this test's own arithmetic), and a day of a sample against hours reckoned by
 * hand. That a time-lapse needs nobody once it is begun is common practice.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { dayOrder } from '../../shared/day/order.ts';
import type { BuildTime, Job } from '../../shared/day/walk.ts';
import { orders } from '../support/permutations.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';

const MIN = 60_000;
const END = 120 * MIN;
const MOST = 5;

const job = fc.record({
  work: fc.integer({ min: 0, max: 12 }).map((fives) => fives * 5 * MIN),
  ready: fc.constantFrom(0, 0, 30 * MIN),
  start: fc.constantFrom(null, null, 40 * MIN),
  priority: fc.constant(1),
  beside: fc.oneof(fc.constant<number[]>([]), fc.subarray([0, 1, 2, 3, 4])),
});
const days = fc.record({
  jobs: fc.array(job, { minLength: 2, maxLength: MOST }).map((jobs) =>
    jobs.map((one, index): Job => {
      const beside = one.beside.filter((other) => other !== index && other < jobs.length);
      return { ...one, beside, runsOn: beside.length > 0 };
    }),
  ),
  build: fc.array(
    fc.array(fc.constantFrom(0, 5 * MIN, 25 * MIN), { minLength: MOST, maxLength: MOST }),
    { minLength: MOST + 1, maxLength: MOST + 1 },
  ),
});

/** Late, over the end, rebuilding, finish: when the person is free, and until when each job goes on. */
function judged(order: readonly number[], jobs: readonly Job[], build: BuildTime) {
  const ends = new Map<number, number>();
  let [free, late, rebuild, before] = [0, 0, 0, -1];
  for (const index of order) {
    const { work, ready, start, beside } = jobs[index]!;
    for (const [other, end] of ends)
      if (!jobs[other]!.beside!.includes(index)) free = Math.max(free, end);
    rebuild += build(before, index);
    const begin = Math.max(free + build(before, index), ready, start ?? 0);
    if (start !== null) late += begin - start;
    ends.set(index, begin + work);
    free = beside!.length > 0 ? begin : begin + work;
    before = index;
  }
  const finish = Math.max(0, ...ends.values());
  return [late, Math.max(0, finish - END), rebuild, finish];
}

it('no other order of a day with time-lapses is better', () => {
  let shorter = 0;
  fc.assert(
    fc.property(days, ({ jobs, build }) => {
      const times: BuildTime = (from, to) => build[from + 1]![to]!;
      const { order, isExact } = dayOrder(jobs, times, END);
      expect(isExact).toBe(true);
      const best = judged(order, jobs, times);
      const alone = jobs.reduce((sum, { work }) => sum + work, 0);
      if (best[3]! < alone) shorter++;
      for (const other of orders(jobs.map((_, index) => index))) {
        const its = judged(other, jobs, times);
        const at = its.findIndex((value, index) => value !== best[index]);
        if (at >= 0) expect(its[at]).toBeGreaterThan(best[at]!);
      }
    }),
    { numRuns: manyRuns(60) },
  );
  // Days that only fit because something runs meanwhile.
  expect(shorter).toBeGreaterThan(10);
});

it('the short shots are made while the crystal grows', () => {
  const kept = readFileSync(
    new URL('../../samples/alum-tray.shootplan.yaml', import.meta.url),
    'utf8',
  );
  const text = `${kept}
day: { start: "09:00", end: "13:00", rig-change: 10 min, light-change: 5 min, subject-change: 5 min }
`;
  const day = coreWith(text).dayFigures(PLAN)!;
  const [grows, ...others] = day.shots;
  expect(grows!.shot).toBe('seed-grows');
  // Rig, light and subject: 20 min; three hours from then on.
  expect([grows!.begins, grows!.ends]).toEqual(['09:20', '12:20']);
  expect(others.map(({ beside }) => beside)).toEqual([['seed-grows'], ['seed-grows']]);
  // Rig, light and subject for the other body, from when the time-lapse runs.
  expect([others[0]!.buildFrom, others[0]!.begins]).toEqual(['09:20', '09:40']);
  expect(others[1]!.endsS).toBeLessThan(grows!.endsS);
  expect(day.neededS).toBe(grows!.endsS);
  expect(day.drop).toEqual([]);
});
