/**
 * Exact fractions in lowest terms, d > 0. Frame rates are such fractions, and a frame count that
 * is off by one a day is a wrong timecode, so nothing here passes through floating point. Terms
 * stay safe integers: `rational` throws a RangeError where a term would pass 2^53 − 1.
 */
export interface Rational {
  readonly n: number;
  readonly d: number;
}

function gcd(a: bigint, b: bigint): bigint {
  let [x, y] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (y > 0n) [x, y] = [y, x % y];
  return x;
}

function reduced(n: bigint, d: bigint): Rational {
  if (d === 0n) throw new RangeError('a fraction over zero');
  const shared = gcd(n, d) * (d < 0n ? -1n : 1n);
  const [rn, rd] = [Number(n / shared), Number(d / shared)];
  if (!Number.isSafeInteger(rn) || !Number.isSafeInteger(rd)) {
    throw new RangeError('a fraction beyond exact integers');
  }
  return { n: rn, d: rd };
}

/** n/d for integers n and d, d ≠ 0. */
export const rational = (n: number, d = 1): Rational => reduced(BigInt(n), BigInt(d));

/** Negative where a < b, 0 where equal, positive where a > b. */
export function compare(a: Rational, b: Rational): number {
  const difference = BigInt(a.n) * BigInt(b.d) - BigInt(b.n) * BigInt(a.d);
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export const equal = (a: Rational, b: Rational): boolean => compare(a, b) === 0;

export const toNumber = (a: Rational): number => a.n / a.d;

/** A plain decimal such as '12.5' as an exact fraction; at most 9 digits on either side. */
export function fromDecimal(text: string): Rational {
  const [whole = '0', part = ''] = text.split('.');
  return reduced(BigInt(whole + part), 10n ** BigInt(part.length));
}
