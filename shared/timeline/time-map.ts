/**
 * Points of a time map: when in the cut, and where in its clip. Between two of them the speed is
 * constant, and a ramp has as many as keep it within an eighth of a frame of the clip: a chord of k
 * frames is off a parabola by c·k²/8, where c is how much the speed changes in a frame.
 */
import { type Course, placeAt } from './course.ts';
import { type Exact, exact, minus, over, toNumber } from './exact.ts';

const TOLERANCE = 1 / 8;

interface MapPoint {
  /** Frame of the cut; negative before it. */
  readonly at: number;
  /** Frames of the clip from its first. */
  readonly place: Exact;
}

/**
 * @param before frames in which a transition shows it before the cut
 * @param end the first frame of the cut in which nothing shows it any more, transitions included
 */
export function timeMap(course: Course, before: number, end: number): readonly MapPoint[] {
  const { frames, from, to } = course;
  const change = Math.abs(toNumber(over(minus(to, from), exact(frames))));
  const step = Math.max(1, Math.floor(Math.sqrt((8 * TOLERANCE) / change)));
  const inside: number[] = [];
  if (change > 0) for (let at = 0; at < Math.min(frames, end); at += step) inside.push(at);
  if (change > 0 && frames < end) inside.push(frames);
  const ats = new Set([-before, ...inside, end]);
  return [...ats].map((at) => ({ at, place: placeAt(course, at) }));
}
