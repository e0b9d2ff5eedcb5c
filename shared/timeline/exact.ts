/**
 * Exact fractions of any size, in lowest terms, d > 0. Frame rates alone have small terms
 * (quantity/rational.ts); sums of beats, speeds and lengths over a whole edit have no such bound,
 * and an edit that is off by one frame in an hour is out of step with its music.
 */
import type { Rational } from '../quantity/rational.ts';

export interface Exact {
  readonly n: bigint;
  readonly d: bigint;
}

function reduced(n: bigint, d: bigint): Exact {
  if (d === 0n) throw new RangeError('a fraction over zero');
  let [x, y] = [n < 0n ? -n : n, d < 0n ? -d : d];
  while (y > 0n) [x, y] = [y, x % y];
  const shared = d < 0n ? -x : x;
  return { n: n / shared, d: d / shared };
}

export const ZERO: Exact = { n: 0n, d: 1n };

/** n/d for integers n and d, d ≠ 0. */
export const exact = (n: number, d = 1): Exact => reduced(BigInt(n), BigInt(d));

export const fromRational = ({ n, d }: Rational): Exact => ({ n: BigInt(n), d: BigInt(d) });

/**
 * The decimal that a number was written as: 0.4 is 2/5, not the binary fraction next to it. Plans
 * write at most nine digits on either side of the point; 12 digits drop what a unit's factor or a
 * percentage left behind them.
 */
export function fromWritten(value: number): Exact {
  const text = Number(value.toPrecision(15))
    .toFixed(12)
    .replace(/\.?0+$/, '');
  const [whole = '0', part = ''] = text.split('.');
  return reduced(BigInt(whole + part), 10n ** BigInt(part.length));
}

export const plus = (a: Exact, b: Exact): Exact => reduced(a.n * b.d + b.n * a.d, a.d * b.d);
export const minus = (a: Exact, b: Exact): Exact => reduced(a.n * b.d - b.n * a.d, a.d * b.d);
export const times = (a: Exact, b: Exact): Exact => reduced(a.n * b.n, a.d * b.d);
export const over = (a: Exact, b: Exact): Exact => reduced(a.n * b.d, a.d * b.n);

/** Negative where a < b, 0 where equal, positive where a > b. */
export function order(a: Exact, b: Exact): number {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export const least = (a: Exact, b: Exact): Exact => (order(a, b) <= 0 ? a : b);
export const most = (a: Exact, b: Exact): Exact => (order(a, b) >= 0 ? a : b);

/** The largest integer at most a. */
export const wholeBelow = ({ n, d }: Exact): number => Number(n / d - (n % d < 0n ? 1n : 0n));

/** The nearest integer; halves go up. */
export const nearestWhole = (a: Exact): number => wholeBelow(plus(a, { n: 1n, d: 2n }));

/** The nearest double; large terms are shortened together before they are divided. */
export function toNumber({ n, d }: Exact): number {
  const excess = Math.max(n.toString(2).length, d.toString(2).length) - 1000;
  const by = BigInt(Math.max(0, excess));
  return Number(n >> by) / Number(d >> by);
}
