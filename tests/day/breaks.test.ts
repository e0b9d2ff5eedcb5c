/**
 * Breaks against a clock that goes on minute by minute, and the order of a day with breaks against
 * every other order there is (brute force over all permutations).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Break, beginsAt, doneAt, inOrder, restBetween } from '../../shared/day/breaks.ts';
import { dayOrder } from '../../shared/day/order.ts';
import { type BuildTime, type Job, resultOf, walk } from '../../shared/day/walk.ts';
import { orders } from '../support/permutations.ts';
import { manyRuns } from '../support/runs.ts';

const MIN = 60_000;

const minutes = (most: number) => fc.integer({ min: 0, max: most });
const someBreaks = fc
  .array(fc.tuple(minutes(200), minutes(50)), { maxLength: 3 })
  .map((all) =>
    inOrder(all.map(([from, long]) => ({ from: from * MIN, to: (from + long) * MIN }))),
  );

const isOff = (minute: number, breaks: readonly Break[]): boolean =>
  breaks.some(({ from, to }) => minute * MIN >= from && minute * MIN < to);

/** Whole minutes from `minute` until a break begins. */
function freeFrom(minute: number, breaks: readonly Break[]): number {
  for (let free = 0; ; free++) if (free > 999 || isOff(minute + free, breaks)) return free;
}

/** Lived through: pieces one after the other, each only where it fits whole. */
function lived(at: number, work: number, piece: number, breaks: readonly Break[]): number {
  let [now, left] = [at, work];
  while (left > 0) {
    const next = Math.min(piece, left);
    if (freeFrom(now, breaks) < next) now++;
    else [now, left] = [now + next, left - next];
  }
  return now;
}

describe('breaks', () => {
  it('are put in order, and those that touch are one', () => {
    const spans = [
      { from: 50, to: 60 },
      { from: 10, to: 20 },
      { from: 20, to: 30 },
      { from: 55, to: 58 },
      { from: 40, to: 40 },
    ];
    expect(inOrder(spans)).toEqual([
      { from: 10, to: 30 },
      { from: 50, to: 60 },
    ]);
    expect(restBetween(15, 55, inOrder(spans))).toBe(15 + 5);
  });

  it('stop work as somebody would who looks at the clock', () => {
    fc.assert(
      fc.property(
        minutes(240),
        fc.integer({ min: 1, max: 90 }),
        fc.integer({ min: 1, max: 40 }),
        someBreaks,
        (at, work, each, breaks) => {
          const piece = Math.min(each, work);
          const begin = beginsAt(at * MIN, piece * MIN, breaks);
          expect(freeFrom(begin / MIN, breaks)).toBeGreaterThanOrEqual(piece);
          for (let minute = at; minute < begin / MIN; minute++)
            expect(freeFrom(minute, breaks)).toBeLessThan(piece);
          expect(doneAt(begin, work * MIN, piece * MIN, breaks)).toBe(
            lived(begin / MIN, work, piece, breaks) * MIN,
          );
        },
      ),
      { numRuns: manyRuns(200) },
    );
  });

  it('let nothing end earlier for beginning later', () => {
    const spans = fc.tuple(minutes(240), minutes(30), minutes(90), fc.integer({ min: 1, max: 40 }));
    fc.assert(
      fc.property(spans, someBreaks, ([at, later, work, each], breaks) => {
        const piece = Math.min(each, work) * MIN;
        const end = (from: number) =>
          doneAt(beginsAt(from * MIN, piece, breaks), work * MIN, piece, breaks);
        expect(end(at + later)).toBeGreaterThanOrEqual(end(at));
      }),
      { numRuns: manyRuns(200) },
    );
  });
});

const job = (breaks: readonly Break[]) =>
  fc.record<Job>({
    work: minutes(12).map((fives) => fives * 5 * MIN),
    ready: fc.constantFrom(0, 0, 30 * MIN),
    start: fc.constantFrom(null, null, 60 * MIN),
    priority: fc.constant(1),
    piece: fc.constantFrom(5 * MIN, 20 * MIN, 60 * MIN),
    runsOn: fc.constantFrom(false, false, true),
    breaks: fc.constant(breaks),
  });

const days = someBreaks.chain((breaks) =>
  fc.record({
    jobs: fc.array(job(breaks), { minLength: 2, maxLength: 5 }),
    build: fc.array(
      fc.array(fc.constantFrom(0, 5 * MIN, 25 * MIN), { minLength: 5, maxLength: 5 }),
      {
        minLength: 6,
        maxLength: 6,
      },
    ),
  }),
);

it('no other order of a day with breaks is better', () => {
  fc.assert(
    fc.property(days, ({ jobs, build }) => {
      const times: BuildTime = (from, to) => build[from + 1]![to]!;
      const { order, isExact } = dayOrder(jobs, times, 180 * MIN);
      expect(isExact).toBe(true);
      const valuesOf = (way: readonly number[]) => {
        const { late, over, rebuild, finish } = resultOf(walk(jobs, way, times), 180 * MIN);
        return [late, over, rebuild, finish];
      };
      const best = valuesOf(order);
      for (const other of orders(jobs.map((_, index) => index))) {
        const its = valuesOf(other);
        const at = its.findIndex((value, index) => value !== best[index]);
        if (at >= 0) expect(its[at]).toBeGreaterThan(best[at]!);
      }
    }),
    { numRuns: manyRuns(60) },
  );
});
