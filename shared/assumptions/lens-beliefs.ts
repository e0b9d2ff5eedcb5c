/**
 * What is believed of a lens before a ruler was held before it: how far what is printed on it may be
 * off, and what is printed nowhere. Read only for lenses with a bench. Ends are wide enough that
 * nearly all lenses lie between them; common practice where nothing else is said.
 */
import { pupilRatioPrior } from './table.ts';

/** By how much what is printed may be off, as a share of it. */
export const AS_PRINTED = {
  'focal-length': 0.01,
  'closest.from-sensor': 0.01,
  'closest.magnification': 0.03,
  'pupil-ratio': 0.05,
} as const;

interface Ends {
  readonly low: number;
  readonly high: number;
}

/**
 * From the rear principal plane forward to the front one, by the focal length, mm. In designs of
 * textbooks traced for it, double Gauss lenses have -0.36 to -0.31 of the focal length, a telephoto
 * lens 0.14, a reversed telephoto 0.59 (W. J. Smith, Modern Lens Design, p. 304; M. Laikin, Lens
 * Design, p. 91).
 */
export const gapEnds = (focalMm: number): Ends => ({ low: -0.4 * focalMm, high: 0.6 * focalMm });

/**
 * By how much that is more at the closest focus, mm: nothing where the lens moves as a whole, and
 * about as much as the front grows where one group moves alone.
 */
export const gapGrowsEnds = (focalMm: number): Ends => ({
  low: -0.1 * focalMm,
  high: 0.1 * focalMm,
});

/** A lens no longer than the sensor's diagonal is mostly built as a reversed telephoto. */
const SHORT_PUPIL_RATIO: Ends = { low: 0.8, high: 1.8 };

/** Exit over entrance pupil of a lens of this focal length before a sensor of this diagonal, mm. */
export const pupilRatioEnds = (focalMm: number, diagonalMm: number | undefined): Ends =>
  diagonalMm !== undefined && focalMm <= diagonalMm
    ? SHORT_PUPIL_RATIO
    : pupilRatioPrior(focalMm, diagonalMm);

/** What the iris does up close: from keeping the f-number (0) to keeping its size (1). */
export const IRIS_ENDS: Ends = { low: 0, high: 1 };

/**
 * How far the course of a lens bends between the ends of its ring, see `bend` of the lens. A
 * parabola that bends by more than a quarter turns back on the way. Moving the front group of the
 * designs traced for `gapEnds` gives 0.03; a group that stays behind by the square of the way, -0.25.
 */
export const BEND_ENDS: Ends = { low: -0.25, high: 0.25 };

/** How far a ruler is right: shares of the value, lengths in mm, light in stops. */
export const RULER = {
  fieldShare: 0.005,
  fieldMm: 0.3,
  distanceMm: 2,
  lightStops: 0.1,
} as const;
