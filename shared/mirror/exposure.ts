/** What a mirror-like subject returns of a light, and what shines through it from behind. */
import { requireNotNegative, requirePositive } from './range.ts';

/**
 * Luminance of a mirror-like subject that shows the light: R·L, at any distance of the light, as
 * long as it fills the family of angles (a mirror keeps radiance; e.g. Hecht, Optics, ch. 5).
 *
 * @param reflectance R, 0 to 1
 * @param sourceLuminance L, cd/m²
 */
export function mirrorLuminance(reflectance: number, sourceLuminance: number): number {
  requireReflectance(reflectance);
  requireNotNegative('the luminance of the light', sourceLuminance);
  return reflectance * sourceLuminance;
}

/**
 * Stray ratio: what the background sends through the film against what the film returns of the
 * light, L_background/(R·L_source). The film's own loss, 8 % at most, is left out.
 *
 * @throws RangeError where the film returns nothing
 */
export function strayRatio(
  backgroundLuminance: number,
  reflectance: number,
  sourceLuminance: number,
): number {
  requireNotNegative('the luminance of the background', backgroundLuminance);
  const returned = mirrorLuminance(reflectance, sourceLuminance);
  requirePositive('the luminance of the film', returned);
  return backgroundLuminance / returned;
}

/**
 * How many stops below the light the background has to be for a stray ratio: log2(1/(R·ratio)).
 * About 9 for 1:20 and a film's average reflectance.
 *
 * @param ratio stray ratio allowed, more than 0; 1:20 is 0.05
 */
export function backgroundStopsBelow(reflectance: number, ratio: number): number {
  requireReflectance(reflectance);
  requirePositive('the reflectance R', reflectance);
  requirePositive('the stray ratio', ratio);
  return -Math.log2(reflectance * ratio);
}

function requireReflectance(reflectance: number): void {
  requireNotNegative('the reflectance R', reflectance);
  if (reflectance > 1)
    throw new RangeError(`the reflectance R must be 1 or less, and is ${reflectance}`);
}
