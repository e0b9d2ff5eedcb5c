/** The colours that a film runs through as it thins or thickens. */
import { type FilmColour, filmColour, type Swatches } from './colour.ts';
import { requireWithin } from './range.ts';
import { THICKEST_NM } from './reflectance.ts';

/**
 * Swatches at even steps over a range of thicknesses, both ends included, thinnest first.
 *
 * @param count how many, 2 to 1000
 * @throws RangeError outside, or where the range runs backwards
 */
export function colourSequence(
  swatches: Swatches,
  fromNm: number,
  toNm: number,
  count: number,
): readonly FilmColour[] {
  requireWithin('the greatest thickness in nm', toNm, 0, THICKEST_NM);
  requireWithin('the least thickness in nm', fromNm, 0, toNm);
  requireWithin('the number of swatches', count, 2, 1000);
  const steps = Math.floor(count) - 1;
  return Array.from({ length: steps + 1 }, (_, i) =>
    filmColour(swatches, fromNm + ((toNm - fromNm) * i) / steps),
  );
}
