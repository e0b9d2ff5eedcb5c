/** Takes laid one after another onto cards, or onto batteries: none is split over two. */

/** Takes of one length. */
export interface Run {
  /** What one take needs: bytes, or seconds. */
  readonly each: number;
  /** How many follow one another; a whole number. */
  readonly takes: number;
}

export const totalOf = (runs: readonly Run[]): number =>
  runs.reduce((sum, { each, takes }) => sum + each * takes, 0);

/** Sums of decimals may miss a whole by their last digits; a take that just fits, fits. */
const SLACK = 1e-9;

/**
 * How many cards (batteries) the runs take in their order, when one is changed as soon as the next
 * take would not fit on what is left.
 *
 * @param capacity of one, in the unit of the runs; positive
 * @returns 0 where there are no takes; null where a single take is more than one holds
 */
export function countFilled(runs: readonly Run[], capacity: number): number | null {
  const holds = capacity * (1 + SLACK);
  let filled = 0;
  let left = 0;
  for (const { each, takes } of runs) {
    if (takes <= 0 || each <= 0) continue;
    if (each > holds) return null;
    const onThis = Math.min(takes, Math.floor(left / each));
    left -= onThis * each;
    const rest = takes - onThis;
    if (rest === 0) continue;
    const perOne = Math.floor(holds / each);
    const more = Math.ceil(rest / perOne);
    filled += more;
    left = holds - (rest - (more - 1) * perOne) * each;
  }
  return filled;
}
