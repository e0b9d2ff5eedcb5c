/** Marked apertures that a lens can be set to, for values that were calculated at the sensor. */
import type { Bench } from './bench.ts';
import { valueIn } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';

/** A mark this little past an f-number is as good as it. */
export const SAME_MARK = 1.03;

/**
 * The mark on the lens that gives this effective f-number or a slightly wider one. If the lens has
 * none, its nearest end; undefined if its apertures are unknown.
 */
export function markFor(
  { marksOnLens, marked }: Bench,
  { effectiveFNumber }: ShotFigures,
  effective: number,
): number | undefined {
  const here = valueIn(effectiveFNumber);
  const set = valueIn(marked);
  if (here === undefined || set === undefined) return undefined;
  const wanted = (effective * set) / here;
  return marksOnLens.findLast((mark) => mark <= wanted * SAME_MARK) ?? marksOnLens[0];
}
