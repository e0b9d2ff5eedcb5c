/**
 * The order of a day against every other order there is (brute force over all permutations), its
 * hours against a worked example, and what it drops against every other choice.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dropped } from '../../shared/day/drop.ts';
import { dayOrder, MOST_EXACT } from '../../shared/day/order.ts';
import { rebuildBetween, type SetUp } from '../../shared/day/set-up.ts';
import { type BuildTime, type Job, walk } from '../../shared/day/walk.ts';
import { orders } from '../support/permutations.ts';
import { manyRuns } from '../support/runs.ts';

const MIN = 60_000;

const job = fc.record<Job>({
  work: fc.integer({ min: 0, max: 12 }).map((minutes) => minutes * 5 * MIN),
  ready: fc.constantFrom(0, 0, 0, 30 * MIN, 90 * MIN),
  start: fc.constantFrom(null, null, null, 20 * MIN, 60 * MIN, 150 * MIN),
  priority: fc.constantFrom(1, 1, 2, 3),
});

const days = fc.integer({ min: 1, max: 6 }).chain((count) =>
  fc.record({
    jobs: fc.array(job, { minLength: count, maxLength: count }),
    build: fc.array(
      fc.array(fc.constantFrom(0, 5 * MIN, 10 * MIN, 25 * MIN), {
        minLength: count,
        maxLength: count,
      }),
      { minLength: count + 1, maxLength: count + 1 },
    ),
    end: fc.constantFrom(null, 60 * MIN, 180 * MIN, 400 * MIN),
  }),
);

const timesOf =
  (table: readonly (readonly number[])[]): BuildTime =>
  (from, to) =>
    table[from + 1]![to]!;

/** Judged by this test's own arithmetic: late, over the end, rebuilding, finish. */
function judged(
  order: readonly number[],
  jobs: readonly Job[],
  build: BuildTime,
  end: number | null,
): readonly number[] {
  let [at, late, rebuild, before] = [0, 0, 0, -1];
  for (const index of order) {
    const { work, ready, start } = jobs[index]!;
    rebuild += build(before, index);
    at += build(before, index);
    if (at < ready) at = ready;
    if (start !== null && at < start) at = start;
    if (start !== null) late += at - start;
    at += work;
    before = index;
  }
  return [late, end !== null && at > end ? at - end : 0, rebuild, at];
}

/** A shot without an hour and a wait of its own never comes after one that matters less. */
const keepsPriorities = (order: readonly number[], jobs: readonly Job[]): boolean => {
  const free = order.map((index) => jobs[index]!).filter((one) => !one.ready && one.start === null);
  return free.every(({ priority }, index) => index === 0 || free[index - 1]!.priority <= priority);
};

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at >= 0 && a[at]! < b[at]!;
}

describe('the order of a day', () => {
  it('is beaten by no other order that keeps the priorities', () => {
    fc.assert(
      fc.property(days, ({ jobs, build, end }) => {
        const times = timesOf(build);
        const { order, isExact } = dayOrder(jobs, times, end);
        expect(isExact).toBe(true);
        expect(keepsPriorities(order, jobs)).toBe(true);
        const its = judged(order, jobs, times, end);
        const all = jobs.map((_, index) => index);
        expect([...order].sort((a, b) => a - b)).toEqual(all);
        for (const other of orders(all))
          if (keepsPriorities(other, jobs))
            expect(isBetter(judged(other, jobs, times, end), its)).toBe(false);
      }),
      { numRuns: manyRuns(60) },
    );
  }, 600_000);

  it('stays that of the plan where nothing is won', () => {
    const jobs = Array.from({ length: 6 }, () => ({
      work: MIN,
      ready: 0,
      start: null,
      priority: 1,
    }));
    expect(dayOrder(jobs, () => 5 * MIN, null).order).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('has each of many jobs once, by priority, the same every time, and says that it is not sure', () => {
    const many = fc.array(job, { minLength: MOST_EXACT + 1, maxLength: 24 });
    fc.assert(
      fc.property(many, (jobs) => {
        const build: BuildTime = (from, to) => (((from + 3) * 7 + to * 5) % 4) * 5 * MIN;
        const { order, isExact } = dayOrder(jobs, build, 480 * MIN);
        expect(isExact).toBe(false);
        expect([...order].sort((a, b) => a - b)).toEqual(jobs.map((_, index) => index));
        expect(keepsPriorities(order, jobs)).toBe(true);
        expect(dayOrder(jobs, build, 480 * MIN).order).toEqual(order);
      }),
      { numRuns: manyRuns(10) },
    );
  }, 600_000);

  it('takes hundreds of jobs', () => {
    const jobs = Array.from({ length: 700 }, (_, index) => ({
      work: MIN,
      ready: 0,
      start: null,
      priority: 1 + (index % 3),
    }));
    const { order } = dayOrder(jobs, () => MIN, null);
    expect(new Set(order).size).toBe(700);
    expect(keepsPriorities(order, jobs)).toBe(true);
  });
});

it('builds, waits for hour and subject, and is late, as reckoned by hand', () => {
  const jobs: readonly Job[] = [
    { work: 10 * MIN, ready: 0, start: null, priority: 1 },
    { work: 5 * MIN, ready: 60 * MIN, start: null, priority: 1 },
    { work: 5 * MIN, ready: 0, start: 70 * MIN, priority: 1 },
  ];
  // 20 + 10 = 30; 30 + 20 = 50, wait to 60, 65; 65 + 20 = 85, 15 late, 90.
  expect(walk(jobs, [0, 1, 2], () => 20 * MIN)).toMatchObject([
    { from: 0, wait: 0, begin: 20 * MIN, late: 0, end: 30 * MIN },
    { from: 30 * MIN, wait: 10 * MIN, begin: 60 * MIN, late: 0, end: 65 * MIN },
    { from: 65 * MIN, wait: 0, begin: 85 * MIN, late: 15 * MIN, end: 90 * MIN },
  ]);
});

it('drops no more than it has to', () => {
  fc.assert(
    fc.property(days, ({ jobs, build, end }) => {
      if (end === null) return;
      const times = timesOf(build);
      const { order } = dayOrder(jobs, times, end);
      const without = dropped(jobs, order, times, end);
      const finish = (gone: readonly number[]): number =>
        judged(
          order.filter((index) => !gone.includes(index)),
          jobs,
          times,
          end,
        )[1]!;
      if (without === null) {
        for (const one of order)
          expect(finish(order.filter((it) => it !== one))).toBeGreaterThan(0);
        return;
      }
      expect(finish(without)).toBe(0);
      for (const back of without)
        expect(finish(without.filter((one) => one !== back))).toBeGreaterThan(0);
    }),
    { numRuns: manyRuns(100) },
  );
}, 600_000);

it('counts what is rebuilt: a light that is moved once, a rig of the same parts never', () => {
  const a: SetUp = {
    shot: 'a',
    rig: 'near',
    parts: ['body', 'lens'],
    lights: [
      { name: 'panel', place: 'left' },
      { name: 'bulb', place: 'up' },
    ],
    subject: 'film',
    body: 'body',
    isLapse: false,
  };
  const b: SetUp = {
    ...a,
    shot: 'b',
    lights: [
      { name: 'panel', place: 'right' },
      { name: 'strip', place: 'up' },
    ],
  };
  expect(rebuildBetween(a, b)).toEqual({ rigs: 0, lights: 3, subjects: 0 });
  expect(rebuildBetween(b, { ...b, rig: 'far', subject: 'bubble' })).toEqual({
    rigs: 1,
    lights: 0,
    subjects: 1,
  });
});
