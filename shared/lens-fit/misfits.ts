/** Measured values that are far from what all else says. */
import { type Belief, type Datum, mostLikely, sigmaOf } from './most-likely.ts';

/** A reading that is far from what all else says. */
export interface Misfit {
  /** Its place among the readings. */
  readonly index: number;
  /** What was believed before and the other readings say. */
  readonly expected: number;
}

/** Farther from what all else says than this many standard deviations, a reading doesn't fit. */
const FAR = 3;

/**
 * Readings that don't fit, worst first. Each is judged by a fit without it, so that it can't vouch
 * for itself, and without those that fit worse, which would make others look wrong.
 */
export function misfitsOf(beliefs: readonly Belief[], data: readonly Datum[]): readonly Misfit[] {
  const found: Misfit[] = [];
  const left = new Set(data.keys());
  while (left.size > 0) {
    const judged = [...left].map((index) => {
      const others = [...left].filter((other) => other !== index);
      return {
        index,
        ...distance(
          beliefs,
          data[index]!,
          others.map((at) => data[at]!),
        ),
      };
    });
    const worst = judged.reduce((most, next) => (next.far > most.far ? next : most));
    if (!(worst.far > FAR)) break;
    found.push({ index: worst.index, expected: worst.expected });
    left.delete(worst.index);
  }
  return found;
}

/** How far a reading is from what the others say, in standard deviations of both together. */
function distance(beliefs: readonly Belief[], datum: Datum, others: readonly Datum[]) {
  const fit = mostLikely(beliefs, others);
  const expected = datum.predict(fit.values);
  const spread = Math.hypot(datum.sigma, sigmaOf(fit, datum.predict));
  return { expected, far: Math.abs(datum.value - expected) / spread };
}
