/**
 * Daylight of a colour temperature: the CIE's method, relative spectral power S0 + M1·S1 + M2·S2.
 *
 * Source: CIE 15:2004, Colorimetry, ch. 3.1 and table T.2; the components are those of D. Judd,
 * D. MacAdam and G. Wyszecki, Journal of the Optical Society of America 54, 1031 (1964), every
 * 10 nm, between which the CIE interpolates in straight lines. The figures are the CIE's as
 * the library colour-science lists them (BSD-3-Clause).
 */
import { requireWithin } from './range.ts';

const FIRST_NM = 380;
const STEP_NM = 10;

/** Components from 380 to 780 nm: the mean, yellow to blue, pink to green. */
// biome-ignore format: a table reads best in rows
const S0: readonly number[] = [
  63.4, 65.8, 94.8, 104.8, 105.9, 96.8, 113.9, 125.6, 125.5, 121.3, 121.3, 113.5,
  113.1, 110.8, 106.5, 108.8, 105.3, 104.4, 100, 96, 95.1, 89.1, 90.5, 90.3,
  88.4, 84, 85.1, 81.9, 82.6, 84.9, 81.3, 71.9, 74.3, 76.4, 63.3, 71.7,
  77, 65.2, 47.7, 68.6, 65,
];
// biome-ignore format: a table reads best in rows
const S1: readonly number[] = [
  38.5, 35, 43.4, 46.3, 43.9, 37.1, 36.7, 35.9, 32.6, 27.9, 24.3, 20.1,
  16.2, 13.2, 8.6, 6.1, 4.2, 1.9, 0, -1.6, -3.5, -3.5, -5.8, -7.2,
  -8.6, -9.5, -10.9, -10.7, -12, -14, -13.6, -12, -13.3, -12.9, -10.6, -11.6,
  -12.2, -10.2, -7.8, -11.2, -10.4,
];
// biome-ignore format: a table reads best in rows
const S2: readonly number[] = [
  3, 1.2, -1.1, -0.5, -0.7, -1.2, -2.6, -2.9, -2.8, -2.6, -2.6, -1.8,
  -1.5, -1.3, -1.2, -1, -0.5, -0.3, 0, 0.2, 0.5, 2.1, 3.2, 4.1,
  4.7, 5.1, 6.7, 7.3, 8.6, 9.8, 10.2, 8.3, 9.6, 8.5, 7, 7.6,
  8, 6.7, 5.2, 7.4, 6.8,
];

/** Where the CIE's daylight begins; warmer light is taken as a Planckian radiator's. */
export const WARMEST_DAYLIGHT_K = 4000;
export const COOLEST_DAYLIGHT_K = 25_000;

/** D65's own temperature: 6500 K, in the radiation constant of today (CIE 15:2004, 3.1). */
export const D65_K = 6504;

/**
 * Chromaticity of daylight.
 *
 * @param temperatureK T, 4000 to 25 000 K
 * @throws RangeError outside
 */
export function daylightChromaticity(temperatureK: number): {
  readonly x: number;
  readonly y: number;
} {
  requireWithin('daylight in K', temperatureK, WARMEST_DAYLIGHT_K, COOLEST_DAYLIGHT_K);
  const k = 1000 / temperatureK;
  const x =
    temperatureK <= 7000
      ? 0.244063 + 0.09911 * k + 2.9678 * k ** 2 - 4.607 * k ** 3
      : 0.23704 + 0.24748 * k + 1.9018 * k ** 2 - 2.0064 * k ** 3;
  return { x, y: -3 * x ** 2 + 2.87 * x - 0.275 };
}

function component(table: readonly number[], wavelengthNm: number): number {
  const place = (wavelengthNm - FIRST_NM) / STEP_NM;
  const below = Math.min(Math.floor(place), table.length - 2);
  const [a, b] = [table[below] as number, table[below + 1] as number];
  return a + (b - a) * (place - below);
}

/**
 * Relative spectral power of daylight, 100 at 560 nm, as a function of wavelength in nm, 380 to
 * 780.
 *
 * @param temperatureK 4000 to 25 000 K
 * @throws RangeError outside either range
 */
export function daylight(temperatureK: number): (wavelengthNm: number) => number {
  const { x, y } = daylightChromaticity(temperatureK);
  const over = 0.0241 + 0.2562 * x - 0.7341 * y;
  const m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / over;
  const m2 = (0.03 - 31.4424 * x + 30.0717 * y) / over;
  return (wavelengthNm) => {
    requireWithin('the wavelength in nm', wavelengthNm, 380, 780);
    return (
      component(S0, wavelengthNm) +
      m1 * component(S1, wavelengthNm) +
      m2 * component(S2, wavelengthNm)
    );
  };
}
