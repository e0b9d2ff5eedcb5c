/**
 * Which frame of its clip a cut shows: the course of the source against the frames of the edit. It
 * begins on a whole frame of the clip, since a fraction of a frame can't be shown and readers round
 * it in different ways.
 */
import {
  type Exact,
  exact,
  least,
  minus,
  order,
  over,
  plus,
  times,
  toNumber,
  wholeBelow,
  ZERO,
} from './exact.ts';

export interface Course {
  /** Frame of the clip, from 0, that the cut begins with; 0 or more. */
  readonly start: number;
  /** Frames of the edit that it lasts, 1 or more. */
  readonly frames: number;
  /** Frames of the clip for each frame of the edit, at its beginning and its end. Both 0: a still. */
  readonly from: Exact;
  readonly to: Exact;
}

/**
 * Frames of the clip from the clip's first to what the cut shows at frame `at`, exact. Between its
 * ends a ramp is linear in speed, so the place is the integral of that: a·k + (b − a)·k²/2n. Before
 * and after them, where transitions look, it goes on at the speed of that end.
 */
export function placeAt({ start, frames, from, to }: Course, at: number): Exact {
  const begin = exact(start);
  if (at <= 0 || order(from, to) === 0) return plus(begin, times(from, exact(at)));
  const inside = Math.min(at, frames);
  const rise = over(times(minus(to, from), times(exact(inside), exact(inside))), exact(2 * frames));
  const there = plus(plus(begin, times(from, exact(inside))), rise);
  return plus(there, times(to, exact(at - inside)));
}

/** The same as a double, where a millionth of a frame is near enough. */
export function placeNear({ start, frames, from, to }: Course, at: number): number {
  const [a, b] = [toNumber(from), toNumber(to)];
  const inside = Math.min(Math.max(at, 0), frames);
  const there = start + a * inside + ((b - a) * inside * inside) / (2 * frames);
  return there + (at < 0 ? a : b) * (at - inside);
}

/** The frame of the clip that frame `at` of the cut shows: the one that is on at that moment. */
const frameAt = (course: Course, at: number): number => wholeBelow(placeAt(course, at));

/**
 * Frames of the cut, from its first, that a clip of `available` frames has; undefined: it isn't
 * known, so all of them.
 */
export function coveredBy(course: Course, available: number | undefined): number {
  return available === undefined
    ? course.frames
    : firstWhere(0, course.frames, (at) => frameAt(course, at) >= available);
}

/** The first number from `low` for which it holds, at most `high`; it holds for all after that. */
function firstWhere(low: number, high: number, holds: (at: number) => boolean): number {
  let [from, to] = [low, high];
  while (from < to) {
    const middle = Math.floor((from + to) / 2);
    if (holds(middle)) to = middle;
    else from = middle + 1;
  }
  return from;
}

/** Frames of the edit for which the clip has pictures before the cut, at most `wanted`. */
export function roomBefore({ start, from }: Course, wanted: number): number {
  if (order(from, ZERO) === 0) return wanted;
  return Math.max(0, wholeBelow(least(exact(wanted), over(exact(start), from))));
}

/** Frames of the edit for which the clip has pictures after the cut, at most `wanted`. */
export function roomAfter(course: Course, available: number | undefined, wanted: number): number {
  if (available === undefined) return wanted;
  const { frames } = course;
  const isOver = (at: number): boolean => frameAt(course, at) >= available;
  return firstWhere(frames, frames + wanted, isOver) - frames;
}
