import { AIRY_FACTOR, airyUm, WAVELENGTH_UM } from './diffraction.ts';

/**
 * The effective f-number at which the ends of a depth T are as sharp as they can be held:
 * N_eff = √(T·m² / (2·2.44·λ)). There the geometric blur at both ends, T·m²/(2·N_eff), equals the Airy
 * disk. Wider, defocus spoils the ends; narrower, diffraction spoils ends and middle alike.
 *
 * T depth needed along the axis (mm, ≥ 0), m magnification (≥ 0). Close-up form (T small against u).
 * Source: P. Hansma, View Camera Focusing in Practice, 1996, who gets √(375·spread mm) at the sensor by
 * making the sum of the squares least; 1/(2·2.44·0.55 µm) is 373 per mm.
 */
export function bestEffectiveFNumber(depthMm: number, magnification: number): number {
  const spreadUm = 1000 * depthMm * magnification ** 2;
  return Math.sqrt(spreadUm / (2 * AIRY_FACTOR * WAVELENGTH_UM));
}

/**
 * The blur that remains at the best effective f-number, µm on the sensor: the sharpest that both ends of
 * this depth can be held. Defocus and Airy disk are equal there and add in quadrature, as in the source
 * above: √2·2.44·λ·N_eff. Inputs as for `bestEffectiveFNumber`.
 */
export function leastBlurUm(depthMm: number, magnification: number): number {
  return Math.SQRT2 * airyUm(bestEffectiveFNumber(depthMm, magnification));
}

/**
 * c*, the blur that depth is judged by, mm: the larger of the circle of confusion and the Airy disk.
 * Where the Airy disk is the larger nothing is sharper than it, `limitedBy` says so, and a smaller
 * aperture must not be asked for.
 */
export function judgedBlur(
  circleOfConfusionMm: number,
  effectiveFNumber: number,
): { readonly blurMm: number; readonly limitedBy: 'circle-of-confusion' | 'diffraction' } {
  const airyMm = airyUm(effectiveFNumber) / 1000;
  return airyMm < circleOfConfusionMm
    ? { blurMm: circleOfConfusionMm, limitedBy: 'circle-of-confusion' }
    : { blurMm: airyMm, limitedBy: 'diffraction' };
}
