/**
 * A birefringent thing between crossed polarisers, lit from behind.
 *
 * Transmission T = sin²2θ·sin²(π·Γ/λ): θ from its axis to the polariser, Γ = Δn·d its retardation.
 * Source: M. Born and E. Wolf, Principles of Optics, ch. 15.4; the colours are those of the chart of
 * A. Michel-Lévy, 1888. Δn is taken as the same at all wavelengths; ideal polarisers, no absorption.
 */
import { adapted } from './adaptation.ts';
import type { Tristimulus } from './colour-matching.ts';
import { requireWithin } from './range.ts';
import { SCREEN_WHITE, type ScreenColour, screenColour } from './screen.ts';
import { weightedSpectrum, whiteOf } from './tristimulus.ts';

/** Beyond it the light's colours have run together, nm. */
export const MOST_RETARDATION_NM = 20_000;

/** At 45° between the polarisers, where it is brightest. */
const BRIGHTEST_RAD = Math.PI / 4;

/**
 * T at one wavelength, 0 to 1.
 *
 * @param retardationNm Γ, nm
 * @param wavelengthNm λ, nm
 * @param axisRad θ, rad
 */
export const crossedTransmission = (
  retardationNm: number,
  wavelengthNm: number,
  axisRad = BRIGHTEST_RAD,
): number => Math.sin(2 * axisRad) ** 2 * Math.sin((Math.PI * retardationNm) / wavelengthNm) ** 2;

/**
 * XYZ at 45° under a light of this colour temperature; Y 100 is the light through the pair set in line.
 *
 * @param retardationNm 0 to 20 000
 * @throws RangeError outside
 */
export function retardationTristimulus(lightK: number, retardationNm: number): Tristimulus {
  requireWithin('the retardation in nm', retardationNm, 0, MOST_RETARDATION_NM);
  let [x, y, z] = [0, 0, 0];
  for (const { nm, weight } of weightedSpectrum(lightK)) {
    const passed = crossedTransmission(retardationNm, nm);
    x += passed * weight.x;
    y += passed * weight.y;
    z += passed * weight.z;
  }
  return { x, y, z };
}

/** On the screen the light through the pair set in line is white, with room for its own colour. */
const FULL_Y = 0.9;

/** The colour of a retardation at 45°, adapted to the white balance. */
export function retardationColour(
  lightK: number,
  whiteBalanceK: number,
  retardationNm: number,
): { readonly xyz: Tristimulus; readonly screen: ScreenColour } {
  const xyz = retardationTristimulus(lightK, retardationNm);
  const white = whiteOf(whiteBalanceK);
  const k = FULL_Y / 100;
  const exposed = { x: k * xyz.x, y: k * xyz.y, z: k * xyz.z };
  const from = { x: white.x / white.y, y: 1, z: white.z / white.y };
  return { xyz, screen: screenColour(adapted(exposed, from, SCREEN_WHITE)) };
}

/**
 * Share of the light, 0 to 1, that passes at 45° on average over a range of retardations:
 * ⟨sin²x⟩ = 1/2 − (sin 2b − sin 2a)/(4(b − a)) for every wavelength, weighted by the light and ȳ.
 *
 * @param fromNm 0 to `toNm`
 * @param toNm Γ, nm, any: a thick thing passes half
 */
export function meanTransmission(lightK: number, fromNm: number, toNm: number): number {
  let y = 0;
  for (const { nm, weight } of weightedSpectrum(lightK)) {
    const [a, b] = [(Math.PI * fromNm) / nm, (Math.PI * toNm) / nm];
    const mean =
      b - a < 1e-6
        ? Math.sin((a + b) / 2) ** 2
        : 0.5 - (Math.sin(2 * b) - Math.sin(2 * a)) / (4 * (b - a));
    y += mean * weight.y;
  }
  return y / 100;
}
