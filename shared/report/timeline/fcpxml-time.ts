/** Times as FCPXML writes them. */
import type { Exact } from '../../timeline/exact.ts';

const LARGEST_TERM = 2n ** 31n - 1n;

/** Seconds as a fraction; rounded up by less than a nanosecond where 32 bits are too few. */
export function seconds(value: Exact): string {
  if (value.d === 1n) return `${value.n}s`;
  if (value.d <= LARGEST_TERM) return `${value.n}/${value.d}s`;
  const up = -((-value.n * LARGEST_TERM) / value.d);
  return `${value.n > 0n ? up + 1n : up}/${LARGEST_TERM}s`;
}
