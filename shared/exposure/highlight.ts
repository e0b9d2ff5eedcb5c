/** The image of a light in a glossy surface, against the mid-grey of the same exposure. */

/**
 * Stops that the image lies over mid-grey where this light alone is exposed right:
 * log2(R·C/(K·Ω)). The surface shows R·L of the face's luminance L; the exposure that suits its
 * illuminance E = L·Ω puts the luminance K·E/C at mid-grey.
 *
 * Any distance and size, as long as the image is not smaller than a pixel. Source: incident- and
 * reflected-light equations of ISO 2720 (from memory); a mirror keeps radiance (Hecht, Optics, ch. 5).
 *
 * @param reflectance R of the surface as a mirror, 0 to 1, more than 0
 * @param projectedSr Ω, projected solid angle of the face at the subject, sr, more than 0
 * @param k reflected-light constant K
 * @param c incident-light constant C
 */
export function highlightOverGreyStops(
  reflectance: number,
  projectedSr: number,
  k: number,
  c: number,
): number {
  return Math.log2((reflectance * c) / (k * projectedSr));
}
