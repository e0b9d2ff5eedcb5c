/**
 * The order of a day's jobs: shots of a higher priority first, start times kept, the end of the day
 * kept, and then least rebuilding. Exact for few jobs; for more, a good order that is the same every
 * time.
 */
import {
  after,
  type BuildTime,
  comesFirst,
  compared,
  endOf,
  type Job,
  MORNING,
  type Now,
  type Result,
  resultOf,
  type Step,
  step,
  walk,
} from './walk.ts';

interface Ordered {
  readonly order: readonly number[];
  /** false: a better order may exist. */
  readonly isExact: boolean;
}

/** Exactly, up to so many jobs: every further one doubles the work. */
export const MOST_EXACT = 10;
/** Ways to one state that are kept; a plan that has more is not searched to its end. */
const MOST_WAYS = 48;
/** More jobs than this are not moved about any more, and above the next not searched at all. */
const MOST_MOVED = 40;
const MOST_CHOSEN = 200;
const MOST_ROUNDS = 12;

/**
 * Of the orders that keep the priorities: the least late, then the least over the end of the day, then
 * the least rebuilding, then the earliest finish, then the nearest to the order given.
 *
 * @param end length of the day, ms; null: it has no end
 */
export function dayOrder(jobs: readonly Job[], build: BuildTime, end: number | null): Ordered {
  if (jobs.length <= MOST_EXACT) return exact(jobs, build, end);
  return { order: improved(chosen(jobs, build), jobs, build, end), isExact: false };
}

/** One way to a state: what is done, and the job that was last. */
interface Way extends Now {
  readonly late: number;
  readonly rebuild: number;
  /** Pairs that are not in the order given. */
  readonly swapped: number;
  readonly job: number;
  readonly before: Way | null;
}

/** Ways that none of the others beats in everything. */
function exact(jobs: readonly Job[], build: BuildTime, end: number | null): Ordered {
  const count = jobs.length;
  const first = jobs.map((job) => jobs.map((other) => comesFirst(other, job)));
  const fronts = new Map<number, Way[]>();
  const keyOf = (set: number, last: number): number => set * count + last;
  let isExact = true;
  const reach = (set: number, job: number, before: Way | null): void => {
    for (let other = 0; other < count; other++)
      if (first[job]![other] && !(set & (1 << other))) return;
    const next = step(before ?? MORNING, job, jobs[job]!, build(before?.job ?? -1, job));
    const key = keyOf(set | (1 << job), job);
    const front = fronts.get(key) ?? [];
    fronts.set(key, front);
    if (!joins(front, wayOf(before, next, jobs[job]!, set))) isExact = false;
  };
  for (let job = 0; job < count; job++) reach(0, job, null);
  for (let set = 1; set < 1 << count; set++)
    for (let last = 0; last < count; last++)
      for (const way of fronts.get(keyOf(set, last)) ?? [])
        for (let job = 0; job < count; job++) if (!(set & (1 << job))) reach(set, job, way);
  const all = (1 << count) - 1;
  const ends = jobs.flatMap((_, last) => fronts.get(keyOf(all, last)) ?? []);
  const best = ends.reduce<Way | null>(
    (so, way) => (so === null || comparedWays(way, so, end) < 0 ? way : so),
    null,
  );
  return { order: orderOf(best), isExact };
}

const wayOf = (before: Way | null, next: Step, job: Job, set: number): Way => ({
  ...after(before ?? MORNING, next, job),
  late: (before?.late ?? 0) + next.late,
  rebuild: (before?.rebuild ?? 0) + next.build,
  swapped: (before?.swapped ?? 0) + bits(set >>> next.job),
  job: next.job,
  before,
});

function bits(set: number): number {
  let count = 0;
  for (let left = set; left > 0; left &= left - 1) count++;
  return count;
}

function resultOfWay(way: Way, end: number | null): Result {
  const { late, rebuild } = way;
  const finish = endOf(way);
  return { late, over: end === null ? 0 : Math.max(0, finish - end), rebuild, finish };
}

const comparedWays = (a: Way, b: Way, end: number | null): number =>
  compared(resultOfWay(a, end), resultOfWay(b, end)) || a.swapped - b.swapped;

const isSame = (a: Way, b: Way): boolean =>
  a.late === b.late && a.rebuild === b.rebuild && a.at === b.at && isSooner(a, b) && isSooner(b, a);

const beats = (a: Way, b: Way): boolean =>
  a.late <= b.late && a.rebuild <= b.rebuild && isSooner(a, b);

/** Whatever comes next can begin no later after `a`. */
const isSooner = (a: Now, b: Now): boolean =>
  a.at <= b.at &&
  a.running.every(({ job, end }) => {
    const its = b.running.find((run) => run.job === job)?.end ?? 0;
    return end <= Math.max(b.at, its);
  });

/** Adds a way where none beats it, and removes those that it beats. @returns false: no room */
function joins(front: Way[], way: Way): boolean {
  for (const other of front)
    if (isSame(other, way) ? other.swapped <= way.swapped : beats(other, way)) return true;
  const kept = front.filter((other) => !beats(way, other));
  front.splice(0, front.length, ...kept);
  if (front.length >= MOST_WAYS) return false;
  front.push(way);
  return true;
}

function orderOf(last: Way | null): readonly number[] {
  const order: number[] = [];
  for (let way = last; way; way = way.before) order.unshift(way.job);
  return order;
}

/** From each the job that is soonest built of those that may come; a start time that would be missed first. */
function chosen(jobs: readonly Job[], build: BuildTime): readonly number[] {
  const left = jobs
    .map((_, index) => index)
    .sort((a, b) => jobs[a]!.priority - jobs[b]!.priority || a - b);
  if (jobs.length > MOST_CHOSEN) return left;
  const order: number[] = [];
  let now = MORNING;
  while (left.length > 0) {
    const before = order.at(-1) ?? -1;
    const may = left.filter((job) => left.every((other) => !comesFirst(jobs[other]!, jobs[job]!)));
    const done = (job: number) =>
      after(now, step(now, job, jobs[job]!, build(before, job)), jobs[job]!);
    const ends = (job: number) => done(job).at;
    const free = may.filter((job) => jobs[job]!.start === null).sort((a, b) => ends(a) - ends(b));
    const timed = may
      .filter((job) => jobs[job]!.start !== null)
      .sort((a, b) => jobs[a]!.start! - jobs[b]!.start!);
    const [soonest, due] = [free[0], timed[0]];
    const isDue =
      due !== undefined &&
      (soonest === undefined || ends(soonest) + build(soonest, due) > jobs[due]!.start!);
    const next = isDue ? due : soonest!;
    order.push(next);
    left.splice(left.indexOf(next), 1);
    now = done(next);
  }
  return order;
}

/** Moves single jobs for as long as that makes the day better. */
function improved(
  from: readonly number[],
  jobs: readonly Job[],
  build: BuildTime,
  end: number | null,
): readonly number[] {
  if (jobs.length > MOST_MOVED) return from;
  const judged = (order: readonly number[]) => resultOf(walk(jobs, order, build), end);
  let best = from;
  let result = judged(best);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = best;
    for (const job of before)
      for (let place = 0; place < jobs.length; place++) {
        const rest = best.filter((other) => other !== job);
        const tried = [...rest.slice(0, place), job, ...rest.slice(place)];
        if (!keepsPriorities(tried, jobs)) continue;
        const its = judged(tried);
        if (compared(its, result) < 0) [best, result] = [tried, its];
      }
    if (best === before) break;
  }
  return best;
}

const keepsPriorities = (order: readonly number[], jobs: readonly Job[]): boolean => {
  let most = 0;
  for (const index of order) {
    const job = jobs[index]!;
    if (job.start !== null || job.ready !== 0) continue;
    if (job.priority < most) return false;
    most = job.priority;
  }
  return true;
};
