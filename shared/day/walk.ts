/**
 * The hours of a day in a given order: when each shot is built, waits, begins and ends. All times in
 * whole milliseconds from the start of the day, so that sums in any order are the same.
 */
import { type Break, beginsAt, doneAt, restBetween } from './breaks.ts';

export interface Job {
  /** Making the subject, settling and takes, once it is built. */
  readonly work: number;
  /** Its first take can't begin before this. */
  readonly ready: number;
  /** Its first take has to begin then; null: at any hour. */
  readonly start: number | null;
  /** 1: before 2. */
  readonly priority: number;
  /** Its longest take, with the wait before it; left out: all of its work in one. */
  readonly piece?: number;
  /** It runs over a break by itself once it is begun. */
  readonly runsOn?: boolean;
  /** In order and apart; the same for every job of a day. */
  readonly breaks?: readonly Break[];
  /** Jobs that can be done while it runs by itself; left out: none. */
  readonly beside?: readonly number[];
}

/** Time to build job `to` after job `from`; -1: after nothing. */
export type BuildTime = (from: number, to: number) => number;

export interface Step {
  readonly job: number;
  /** When building begins. */
  readonly from: number;
  readonly build: number;
  /** When building is done. */
  readonly built: number;
  /** Without breaks. */
  readonly wait: number;
  /** When its first take, or the making of its subject, begins. */
  readonly begin: number;
  /** How much that is after its start time. */
  readonly late: number;
  readonly end: number;
  /** Breaks between `from` and `end`. */
  readonly rest: number;
}

/** What runs by itself. */
interface Run {
  readonly job: number;
  readonly end: number;
  readonly beside: readonly number[];
}

/** How far a day has come: when its person is free, and what still runs then. */
export interface Now {
  readonly at: number;
  readonly running: readonly Run[];
}

export const MORNING: Now = { at: 0, running: [] };

const NONE: readonly Break[] = [];

/**
 * One step on: building, then waiting for hour and subject, then work. What can't be done beside
 * something that runs begins after it.
 */
export function step(now: Now, job: number, of: Job, build: number): Step {
  const at = now.running.reduce(
    (free, { end, beside }) => (beside.includes(job) ? free : Math.max(free, end)),
    now.at,
  );
  const { work, ready, start, piece = work, runsOn = false, breaks = NONE } = of;
  const from = build > 0 ? beginsAt(at, 1, breaks) : at;
  const built = doneAt(from, build, 1, breaks);
  const one = runsOn ? 1 : Math.min(piece, work);
  const begin = beginsAt(Math.max(built, ready, start ?? 0), one, breaks);
  const end = runsOn ? begin + work : doneAt(begin, work, one, breaks);
  return {
    job,
    from,
    build,
    built,
    wait: begin - built - restBetween(built, begin, breaks),
    begin,
    late: start === null ? 0 : begin - start,
    end,
    rest: restBetween(from, end, breaks),
  };
}

/** How far the day has come with a step: what runs by itself leaves its person free. */
export function after({ running }: Now, { job, begin, end }: Step, { beside = [] }: Job): Now {
  const at = beside.length > 0 ? begin : end;
  const still = running.filter((run) => run.end > at);
  return { at, running: beside.length > 0 ? [...still, { job, end, beside }] : still };
}

/** When all is done. */
export const endOf = ({ at, running }: Now): number =>
  running.reduce((last, { end }) => Math.max(last, end), at);

export function walk(jobs: readonly Job[], order: readonly number[], build: BuildTime): Step[] {
  const steps: Step[] = [];
  let now = MORNING;
  let before = -1;
  for (const job of order) {
    const next = step(now, job, jobs[job]!, build(before, job));
    steps.push(next);
    now = after(now, next, jobs[job]!);
    before = job;
  }
  return steps;
}

/** What an order is judged by, the first first. */
export interface Result {
  /** Sum of what shots are late. */
  readonly late: number;
  /** How much the last take ends after the day. */
  readonly over: number;
  readonly rebuild: number;
  readonly finish: number;
}

/** When the last of them ends. */
export const finishOf = (steps: readonly Step[]): number =>
  steps.reduce((last, { end }) => Math.max(last, end), 0);

/** @param end null: the day has no end */
export function resultOf(steps: readonly Step[], end: number | null): Result {
  const finish = finishOf(steps);
  return {
    late: steps.reduce((sum, { late }) => sum + late, 0),
    over: end === null ? 0 : Math.max(0, finish - end),
    rebuild: steps.reduce((sum, { build }) => sum + build, 0),
    finish,
  };
}

/** Negative: `a` is better. */
export const compared = (a: Result, b: Result): number =>
  a.late - b.late || a.over - b.over || a.rebuild - b.rebuild || a.finish - b.finish;

/** Neither an hour nor a subject decides when it is filmed, so its priority may. */
const isFree = ({ start, ready }: Job): boolean => start === null && ready === 0;

/** Whether `a` has to come before `b`. */
export const comesFirst = (a: Job, b: Job): boolean =>
  isFree(a) && isFree(b) && a.priority < b.priority;
