/** Where a figure may turn between the ends of a value that is known roughly. */
import type { Place } from '../plan/place.ts';

/** The key in the plan's words. */
export const keyAt = ({ path }: Place): string =>
  String(path.filter((step) => typeof step === 'string').at(-1));

/** Shares of the way to either end. */
const EIGHTHS = [-0.75, -0.5, -0.25, 0.25, 0.5, 0.75];

/**
 * Where figures may turn between the ends of a written range. Nearly all of them rise or fall all
 * the way, so that the ends are their extremes. Not so with angles and with where a light stands:
 * what tilts by 3 degrees to either side needs no depth between, and a light lights most evenly
 * from somewhere in the middle of its way.
 */
export function turnsBetween(
  at: Place,
  low: number,
  middle: number,
  high: number,
): readonly number[] {
  if (!TURNING.has(keyAt(at)) || !(low < high)) return [];
  const zero = middle / (middle > 0 ? middle - low : middle - high);
  return low < 0 && high > 0 && middle !== 0
    ? [...EIGHTHS, middle > 0 ? -zero : zero].sort((a, b) => a - b)
    : EIGHTHS;
}

const TURNING: ReadonlySet<string> = new Set([
  'tilt',
  'rail-angle',
  'elevation',
  'azimuth',
  'distance',
]);
