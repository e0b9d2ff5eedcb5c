/**
 * Depth and light that pull the aperture in two directions: stopping down for the one costs the
 * other. Neither finding's own fixes can then clear the shot.
 */
import type { ShotFigures } from '../figures/shot-figures.ts';

/** Less than this nobody corrects: the smallest step of a camera, in stops. */
const NOTICED_STOPS = 1 / 3;

/** Accuracy of the paraxial depth. */
const DEPTH_DEAD_BAND = 0.05;

/** Whether a shot is too dark and too shallow at once; false where either is not known. */
export function isDarkAndShallow(figures: ShotFigures): boolean {
  const { exposureErrorStops: error, depthMm, pullDepthMm, usableDepthMm } = figures;
  const there = pullDepthMm.known ? pullDepthMm : usableDepthMm;
  const { needed } = depthMm;
  if (!error.known || !there.known || !needed.known) return false;
  return error.value < -NOTICED_STOPS && there.value < needed.value * (1 - DEPTH_DEAD_BAND);
}
