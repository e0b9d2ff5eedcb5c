/** Which jobs a day that is too short goes without. */
import { type BuildTime, type Job, resultOf, walk } from './walk.ts';

/**
 * Drops the lowest priorities first, and among equals the last of the order, until the rest ends in
 * time; then takes back what needn't have been dropped, the most important first.
 *
 * @returns the dropped jobs in the order that they were in; null: no job alone ends in time
 */
export function dropped(
  jobs: readonly Job[],
  order: readonly number[],
  build: BuildTime,
  end: number,
): readonly number[] | null {
  const fits = (without: ReadonlySet<number>): boolean => {
    const rest = order.filter((job) => !without.has(job));
    return resultOf(walk(jobs, rest, build), end).over === 0;
  };
  const place = new Map(order.map((job, index) => [job, index]));
  const leastFirst = [...order].sort(
    (a, b) => jobs[b]!.priority - jobs[a]!.priority || place.get(b)! - place.get(a)!,
  );
  const without = new Set<number>();
  for (const job of leastFirst) {
    if (fits(without)) break;
    without.add(job);
  }
  for (let before = -1; before !== without.size; ) {
    before = without.size;
    for (const job of leastFirst.filter((one) => without.has(one)).reverse()) {
      without.delete(job);
      if (!fits(without)) without.add(job);
    }
  }
  return without.size === order.length && order.length > 0
    ? null
    : order.filter((job) => without.has(job));
}
