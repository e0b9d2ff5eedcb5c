/**
 * Speed of a cut against real time and the source that it uses: 1 is real time whatever the rates,
 * so one second at 1/2 uses half a second of the clip. A ramp is linear in the time of the edit.
 */
import { type Exact, exact, least, order, over, plus, times, toNumber } from './exact.ts';

/** Speeds at the beginning and the end of a cut; equal where it does not ramp. Both above 0. */
export interface Ramp {
  readonly from: Exact;
  readonly to: Exact;
}

const HALF = exact(1, 2);

/**
 * Source used over a whole cut, s: the integral of speed over its length T (s), (a + b)/2·T.
 * Definition of the integral of a linear function; exact.
 */
export const sourceUsed = ({ from, to }: Ramp, length: Exact): Exact =>
  times(times(plus(from, to), HALF), length);

/**
 * When a cut has used `source` (s), in s from its beginning, at most its length: the root of
 * (b − a)·t²/(2T) + a·t = source. A double, since roots have no exact fraction.
 */
export function timeAt(ramp: Ramp, length: Exact, source: Exact): number {
  if (order(source, sourceUsed(ramp, length)) >= 0) return toNumber(length);
  if (source.n <= 0n) return 0;
  const [a, b, T, s] = [ramp.from, ramp.to, length, source].map(toNumber) as [
    number,
    number,
    number,
    number,
  ];
  // 2s/(a + √(a² + 2s(b − a)/T)): the form that does not cancel where the ramp is nearly level.
  return (2 * s) / (a + Math.sqrt(Math.max(0, a * a + (2 * s * (b - a)) / T)));
}

/** The slower end of a ramp. */
export const slowest = ({ from, to }: Ramp): Exact => least(from, to);

/**
 * Slowest speed without repeated frames: delivery rate / recorded rate. Under it frames are shown twice or made up.
 * Rates in frames per second, above 0. 50 fps delivered at 25 goes down to 1/2.
 */
export const slowestWithoutRepeats = (delivered: Exact, recorded: Exact): Exact =>
  over(delivered, recorded);
