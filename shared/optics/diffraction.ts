/** λ, the wavelength that diffraction is judged at: the eye's best, 0.55 µm. */
export const WAVELENGTH_UM = 0.55;

/**
 * The Airy disk's diameter over λ·N, as the trade rounds it: the first zero of J1 stands at 1.2196699·π,
 * so exactly it is 2 · 1.2196699.
 */
export const AIRY_FACTOR = 2.44;

/**
 * Airy disk diameter (first dark ring) on the sensor, µm: A = 2.44·λ·N_eff.
 *
 * N_eff effective f-number (> 0), λ 0.55 µm. Valid for a round pupil and small angles.
 * Source: G. B. Airy 1835; E. Hecht, Optics, "The circular aperture".
 */
export function airyUm(effectiveFNumber: number): number {
  return AIRY_FACTOR * WAVELENGTH_UM * effectiveFNumber;
}

/**
 * Contrast that diffraction leaves of a fine pattern, 0 to 1: the modulation transfer of a round,
 * aberration-free pupil in incoherent light, (2/π)·(acos x − x·√(1 − x²)) with x = v·λ·N_eff.
 *
 * v spatial frequency on the sensor (cycles/mm, ≥ 0), N_eff effective f-number. 0 at and beyond the
 * cut-off x = 1. Source: J. W. Goodman, Introduction to Fourier Optics, "Effects of aberrations on
 * frequency response", diffraction-limited circular pupil.
 */
export function diffractionContrast(cyclesPerMm: number, effectiveFNumber: number): number {
  const x = (cyclesPerMm * WAVELENGTH_UM * effectiveFNumber) / 1000;
  if (x >= 1) return 0;
  return (2 / Math.PI) * (Math.acos(x) - x * Math.sqrt(1 - x * x));
}

/** Nyquist frequency of pixels of this pitch on the sensor, cycles/mm: 1/(2·pixel). */
export function nyquistPerMm(pixelUm: number): number {
  return 1000 / (2 * pixelUm);
}
