/**
 * The f-numbers that apertures are marked with, in third stops from f/1. Figures use a number as it is
 * written: f/22 is 22, and not 22.63 as in the exact series behind the marks, 2^(k/6) for the k-th third of
 * a stop.
 * Source: common practice, the rounding of the preferred series that ISO 517 normalises (its table is not
 * public, so the marks come from lens engravings at large).
 */
export const MARKED_APERTURES: readonly number[] = [
  1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11,
  13, 14, 16, 18, 20, 22, 25, 29, 32, 36, 40, 45, 51, 57, 64, 72, 80, 90,
];

/**
 * The narrowest mark that is at most this f-number; undefined before the series begins. Compared as
 * written, so that a mark answers for itself.
 */
export function markAtMost(fNumber: number): number | undefined {
  return MARKED_APERTURES.findLast((mark) => mark <= fNumber);
}
