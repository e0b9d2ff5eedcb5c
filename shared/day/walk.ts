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

const NONE: readonly Break[] = [];

/** One step on: building, then waiting for hour and subject, then work. */
export function step(at: number, job: number, of: Job, build: number): Step {
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

export function walk(jobs: readonly Job[], order: readonly number[], build: BuildTime): Step[] {
  const steps: Step[] = [];
  let at = 0;
  let before = -1;
  for (const job of order) {
    const next = step(at, job, jobs[job]!, build(before, job));
    steps.push(next);
    at = next.end;
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

/** @param end null: the day has no end */
export function resultOf(steps: readonly Step[], end: number | null): Result {
  const finish = steps.at(-1)?.end ?? 0;
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
