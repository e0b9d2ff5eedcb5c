/**
 * Gels: what they do to a colour temperature and to the light. A filter shifts the reciprocal of the
 * colour temperature by nearly the same amount whatever the lamp, so shifts are given in mired, a
 * million over kelvin, and add up (reciprocal colour temperature; G. Wyszecki and W. S. Stiles, Color
 * Science, 2nd ed., section 3.11, from memory).
 */

const MILLION = 1e6;

export const miredOf = (kelvin: number): number => MILLION / kelvin;

/**
 * Colour temperature behind a gel, K.
 *
 * @param kelvin of the lamp, above 0
 * @param mired shift of the gel; positive is warmer
 * @returns null where the shift leaves no colour temperature: bluer than any
 */
export function shiftedKelvin(kelvin: number, mired: number): number | null {
  const reciprocal = miredOf(kelvin) + mired;
  return reciprocal > 0 ? MILLION / reciprocal : null;
}

/** Stops of light that a share of it loses; Infinity where nothing passes. */
export const stopsOfTransmission = (share: number): number => 0 - Math.log2(share);
