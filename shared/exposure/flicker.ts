/** Frequency of the light of a lamp on alternating current, Hz: twice the mains, one pulse each half wave. */
export function lampFrequencyHz(mainsHz: number): number {
  return 2 * mainsHz;
}

/**
 * Flicker that a shutter time leaves: depth of modulation × |sin(π·f_L·t)/(π·f_L·t)|.
 *
 * f_L frequency of the light (Hz, ≥ 0), t shutter time (s, > 0), depth of modulation 0 to 1 (amplitude over
 * mean). 0 when t·f_L is whole, whatever the rate. For light that varies as a sine; of other courses it
 * is the fundamental, and where t·f_L is whole every harmonic vanishes too.
 * Source: mean of 1 + depth·cos(2π·f_L·τ) over a time t.
 */
export function flickerResidual(frequencyHz: number, timeS: number, modulationDepth = 1): number {
  const cycles = frequencyHz * timeS;
  if (cycles === 0) return modulationDepth;
  // Taken from the nearest whole cycle, so that a whole number of cycles gives a plain 0.
  const fromWhole = cycles - Math.round(cycles);
  return modulationDepth * Math.abs(Math.sin(Math.PI * fromWhole) / (Math.PI * cycles));
}

/**
 * How fast flicker bands roll through the picture, Hz: |f_L − k·rate| for the nearest whole k; 0 where the
 * rate divides f_L and they stand. Only of meaning where there is a residual. Both > 0.
 * Source: sampling of a periodic light at the frame rate.
 */
export function bandRollHz(frequencyHz: number, ratePerS: number): number {
  const perFrame = frequencyHz / ratePerS;
  const rest = Math.abs(perFrame - Math.round(perFrame));
  return rest < 1e-9 ? 0 : rest * ratePerS;
}

/** Flicker bands over the height of the picture: f_L × readout time (s) of the whole frame. */
export function bandsInFrame(frequencyHz: number, readoutS: number): number {
  return frequencyHz * readoutS;
}

/**
 * Shutter times in s that leave no flicker at a rate: whole cycles of the light, n/f_L, that fit in a
 * frame; the longest first, `most` of them. Empty where not even one cycle fits.
 */
export function flickerFreeTimesS(
  frequencyHz: number,
  ratePerS: number,
  most = 12,
): readonly number[] {
  const cycles = wholeCyclesInFrame(frequencyHz, ratePerS);
  return Array.from({ length: Math.min(cycles, most) }, (_, n) => (cycles - n) / frequencyHz);
}

/** The flicker-free time nearest to a wanted one (s) that fits in a frame; undefined where none does. */
export function flickerFreeTimeS(
  frequencyHz: number,
  ratePerS: number,
  wantedS: number,
): number | undefined {
  const cycles = wholeCyclesInFrame(frequencyHz, ratePerS);
  if (cycles < 1) return undefined;
  return Math.min(Math.max(Math.round(wantedS * frequencyHz), 1), cycles) / frequencyHz;
}

function wholeCyclesInFrame(frequencyHz: number, ratePerS: number): number {
  return Math.floor(frequencyHz / ratePerS + 1e-9);
}
