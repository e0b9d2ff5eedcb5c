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

/** Nearer than this by the fit of all of them, a reading needs no fit of the others to be let pass. */
const SUSPECT = FAR / 2;

/** From so many on, each is judged by the fit of all of them, and the worst of them are told. */
const MANY = 24;

/**
 * Readings that don't fit, worst first. Each is judged by what the others say, so that it can't vouch
 * for itself, and without those that fit worse, which would make others look wrong. Of more than
 * `MANY` readings no more than so many are told, so that a long list takes no longer than it has to.
 */
export function misfitsOf(beliefs: readonly Belief[], data: readonly Datum[]): readonly Misfit[] {
  const found: Misfit[] = [];
  const left = new Set(data.keys());
  while (left.size > 0 && found.length < MANY) {
    const quick = amongAll(beliefs, data, left);
    const judged =
      left.size > MANY
        ? quick
        : quick.map((one) =>
            one.far > SUSPECT ? { ...one, ...withoutIt(beliefs, data, left, one.index) } : one,
          );
    const worst = judged.reduce((most, next) => (next.far > most.far ? next : most));
    if (!(worst.far > FAR)) break;
    found.push({ index: worst.index, expected: worst.expected });
    left.delete(worst.index);
  }
  return found;
}

/** A reading judged by a fit of the others. */
function withoutIt(
  beliefs: readonly Belief[],
  data: readonly Datum[],
  left: ReadonlySet<number>,
  index: number,
): ReturnType<typeof distance> {
  const others = [...left].filter((other) => other !== index).map((at) => data[at]!);
  return distance(beliefs, data[index]!, others);
}

/**
 * The same by one fit of all: taking a reading out again moves what is expected of it by the share
 * that it had in it. Exact where predictions are straight over what is uncertain, as they nearly are
 * among many readings.
 * Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression, "Deletion".
 */
function amongAll(
  beliefs: readonly Belief[],
  data: readonly Datum[],
  left: ReadonlySet<number>,
): readonly { readonly index: number; readonly expected: number; readonly far: number }[] {
  const fit = mostLikely(
    beliefs,
    [...left].map((at) => data[at]!),
  );
  return [...left].map((index) => {
    const { value, sigma, predict } = data[index]!;
    const own = (sigmaOf(fit, predict) / sigma) ** 2;
    const others = Math.max(1 - own, Number.EPSILON);
    const off = (value - predict(fit.values)) / others;
    return { index, expected: value - off, far: (Math.abs(off) * Math.sqrt(others)) / sigma };
  });
}

/** How far a reading is from what the others say, in standard deviations of both together. */
function distance(beliefs: readonly Belief[], datum: Datum, others: readonly Datum[]) {
  const fit = mostLikely(beliefs, others);
  const expected = datum.predict(fit.values);
  const spread = Math.hypot(datum.sigma, sigmaOf(fit, datum.predict));
  return { expected, far: Math.abs(datum.value - expected) / spread };
}
