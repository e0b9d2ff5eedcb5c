/** A frame rate that was measured as the exact fraction that it stands for. */
import { type Rational, rational } from '../quantity/rational.ts';

/** Whole rates, the trade's rates over 1.001 (SMPTE ST 12-1), and what is left to three decimals. */
const DIVISORS = [1, 1001, 1000];
/** Relative: 24 and 24000/1001 are a thousandth apart, frame times in ticks good to far less. */
const SAME = 1e-6;

/** @returns null where no usual fraction is that near */
export function exactRate(framesPerS: number): Rational | null {
  if (!(framesPerS > 0 && Number.isFinite(framesPerS))) return null;
  for (const d of DIVISORS) {
    const n = Math.round(framesPerS * d);
    if (n > 0 && Math.abs(n / d / framesPerS - 1) < SAME) return rational(n, d);
  }
  return null;
}
