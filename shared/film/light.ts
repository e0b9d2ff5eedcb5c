/** A light's spectrum, from nothing but its colour temperature. */
import { COOLEST_DAYLIGHT_K, daylight, WARMEST_DAYLIGHT_K } from './daylight.ts';
import { requireWithin } from './range.ts';

/** Second radiation constant c2 = hc/k, m·K (CODATA 2018). */
const C2 = 1.438776877e-2;

export const WARMEST_LIGHT_K = 1000;

/**
 * Relative spectral power of a Planckian radiator, 100 at 560 nm, as a function of wavelength in
 * nm: λ⁻⁵/(exp(c2/(λT)) − 1).
 *
 * @param temperatureK T, more than 0
 */
export function planckian(temperatureK: number): (wavelengthNm: number) => number {
  requireWithin('the temperature in K', temperatureK, 500, 1e6);
  const power = (nm: number): number =>
    (nm / 560) ** -5 / Math.expm1(C2 / (nm * 1e-9 * temperatureK));
  const at560 = power(560);
  return (wavelengthNm) => (100 * power(wavelengthNm)) / at560;
}

/**
 * Relative spectral power of a light of which only the colour temperature is known: CIE daylight
 * from 4000 K, Planckian below. Lamps with a line or pump spectrum (fluorescent tubes, LEDs of
 * white from blue) shift a film's colours against this.
 *
 * @param temperatureK 1000 to 25 000 K
 * @throws RangeError outside
 */
export function lightSpectrum(temperatureK: number): (wavelengthNm: number) => number {
  requireWithin('the colour temperature in K', temperatureK, WARMEST_LIGHT_K, COOLEST_DAYLIGHT_K);
  return temperatureK < WARMEST_DAYLIGHT_K ? planckian(temperatureK) : daylight(temperatureK);
}
