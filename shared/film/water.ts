/** Water's refractive index. */
import { requireWithin } from './range.ts';

/** Pairs (A, B in µm²) of the Sellmeier sum. */
const TERMS = [
  [5.684027565e-1, 5.101829712e-3],
  [1.726177391e-1, 1.821153936e-2],
  [2.086189578e-2, 2.620722293e-2],
  [1.130748688e-1, 1.069792721e1],
] as const;

/**
 * Refractive index of distilled water at 20 °C: n² − 1 = Σ A·λ²/(λ² − B).
 *
 * Source: M. Daimon and A. Masumura, Applied Optics 46, 3811 (2007). Valid from 182 to 1129 nm. A
 * few per cent of soap or glycerine raise it by a few thousandths.
 *
 * @param wavelengthNm λ, nm
 * @throws RangeError outside 182 to 1129 nm
 */
export function waterIndex(wavelengthNm: number): number {
  requireWithin('the wavelength in nm', wavelengthNm, 182, 1129);
  const squared = (wavelengthNm / 1000) ** 2;
  return Math.sqrt(1 + TERMS.reduce((sum, [a, b]) => sum + (a * squared) / (squared - b), 0));
}
