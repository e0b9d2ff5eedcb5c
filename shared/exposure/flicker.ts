/** Frequency of the light of a lamp on alternating current, Hz: twice the mains, one pulse each half wave. */
export function lampFrequencyHz(mainsHz: number): number {
  return 2 * mainsHz;
}

/**
 * Flicker that a shutter time leaves of light that swings as a sine: depth of modulation ×
 * |sin(π·f_L·t)/(π·f_L·t)|.
 *
 * f_L frequency of the light (Hz, ≥ 0), t shutter time (s, > 0), depth of modulation 0 to 1 (amplitude over
 * mean). 0 when t·f_L is whole, whatever the rate, and then of every other course of the light too.
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
 * What the mains and the clocks of lamps and bodies are good to, as a share of the frequency: 0.2 %,
 * which the mains keep to on most days (common practice), and which 1000/1001 of a rate is inside of.
 * A time that is whole cycles to within it is as whole as any can be set.
 */
const GOOD_TO = 0.002;

/**
 * The most flicker that a shutter time leaves, whatever the course of the light over its cycle: half
 * of what the exposure swings by, over its mean, at the worst moment to begin; 1 at most.
 *
 * Over N = f_L·t cycles two exposures differ by what the light gives in two parts of a cycle, each
 * ρ long, ρ the distance of N from a whole number. Most apart are they for a pulse that fits in
 * one of them. With the least light κ = (1 − depth)/(1 + depth) of the most that is
 * ρ(1 − κ)/(ρ + (1 − ρ)κ) of a cycle's light, and a whole cycle's where the light goes out between
 * pulses: 1/(2N) then, against a sine's 1/(πN). Whole cycles leave nothing.
 *
 * f_L (Hz, ≥ 0), t (s, > 0), depth of modulation 0 to 1: (most − least)/(most + least).
 * Source: the integral of a periodic function over a time t, here; tried with pulses of any length.
 */
export function mostFlicker(frequencyHz: number, timeS: number, modulationDepth = 1): number {
  const cycles = frequencyHz * timeS;
  const rest = Math.abs(cycles - Math.round(cycles));
  if (cycles >= 0.5 && rest <= GOOD_TO * cycles)
    return flickerResidual(frequencyHz, timeS, modulationDepth);
  const least = (1 - modulationDepth) / (1 + modulationDepth);
  const apart = (rest * (1 - least)) / (rest + (1 - rest) * least);
  if (cycles === 0) return modulationDepth;
  return Math.min(1, apart / (2 * cycles));
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

/**
 * Of marked shutter speeds (reciprocals of s) those that leave no flicker at a rate, s: whole cycles of the
 * light, to what clocks are good to, that fit in a frame.
 */
export function flickerFreeMarksS(
  frequencyHz: number,
  ratePerS: number,
  reciprocals: readonly number[],
): readonly number[] {
  const most = wholeCyclesInFrame(frequencyHz, ratePerS);
  return reciprocals
    .filter((reciprocal) => {
      const cycles = frequencyHz / reciprocal;
      const whole = Math.round(cycles);
      return whole >= 1 && whole <= most && Math.abs(cycles - whole) <= GOOD_TO * cycles;
    })
    .map((reciprocal) => 1 / reciprocal);
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
