/**
 * The spectrum of an edge, and the finest pattern that an aperture lets through to the pixels.
 *
 * The steps of an edge from pixel to pixel are its line spread; the size of their Fourier transform
 * over its value at 0 is the contrast that is left of a pattern of each frequency (ISO 12233, edge
 * based response). A difference of two samples weakens high frequencies by sin(πf)/(πf), which is
 * divided out, as there. Frequencies are in cycles a pixel; 0.5 is the finest that pixels can hold.
 */
import { diffractionContrast } from '../optics/diffraction.ts';

const FINEST = 0.5;
const HALF = 0.5;
/** Beyond the first fall to a half a contrast may rise again: it is looked for in steps. */
const STEP = 0.02;
/** Halvings of a step. */
const HALVINGS = 10;

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

/** Where a contrast that begins with 1 is first down to a half; at most `FINEST`. */
function whereHalf(contrast: (cyclesPerPx: number) => number): number {
  let high = STEP;
  while (contrast(high) > HALF) {
    if (high >= FINEST) return FINEST;
    high += STEP;
  }
  let low = high - STEP;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (contrast(middle) > HALF) low = middle;
    else high = middle;
  }
  return Math.min(FINEST, (low + high) / 2);
}

/**
 * Frequency at which an edge keeps half of its contrast.
 *
 * @param first its first value, and how far on the next ones are
 * @param length steps to its last value; all in one direction, and not all 0
 */
export function halfContrastOf(
  grey: Uint8Array,
  first: number,
  stride: number,
  length: number,
): number {
  const height = grey[first + length * stride]! - grey[first]!;
  return whereHalf((cyclesPerPx) => {
    // One sine and one cosine, and the rest by turning on: edges are many.
    const turn = 2 * Math.PI * cyclesPerPx;
    const [cosTurn, sinTurn] = [Math.cos(turn), Math.sin(turn)];
    let [cos, sin, real, imaginary] = [1, 0, 0, 0];
    let before = grey[first]!;
    for (let index = 1; index <= length; index++) {
      const value = grey[first + index * stride]!;
      real += (value - before) * cos;
      imaginary += (value - before) * sin;
      before = value;
      [cos, sin] = [cos * cosTurn - sin * sinTurn, sin * cosTurn + cos * sinTurn];
    }
    return Math.hypot(real, imaginary) / Math.abs(height) / sinc(cyclesPerPx);
  });
}

/** The same of the sharpest edge behind an aperture, on pixels that are filled (their own sinc). */
export const apertureHalfContrast = (effectiveFNumber: number, pixelUm: number): number =>
  whereHalf(
    (cyclesPerPx) =>
      diffractionContrast((cyclesPerPx * 1000) / pixelUm, effectiveFNumber) * sinc(cyclesPerPx),
  );
