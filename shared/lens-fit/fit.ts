/**
 * A lens as it is by its sheet and by what a ruler said of it: the values that are most likely, how
 * sure they are together, and what was measured that doesn't fit.
 */
import type { LensPart } from '../optics/parts.ts';
import type { Vector } from './cholesky.ts';
import { type LensBeliefs, lensWith } from './lens-beliefs.ts';
import { type Datum, type Likely, mostLikely, sigmaOf } from './most-likely.ts';
import { predicted, type ReadingKind, type Setup } from './reading.ts';

/** One value of one row of a bench. */
export interface Reading {
  readonly setup: Setup;
  readonly of: ReadingKind;
  readonly value: number;
  /** One standard deviation, in the unit of the value. */
  readonly sigma: number;
}

export interface LensFit extends Likely {
  readonly beliefs: LensBeliefs;
}

/** A reading that is far from what all else says. */
interface Misfit {
  /** Its place among the readings. */
  readonly index: number;
  /** What the sheet and the other readings say. */
  readonly expected: number;
}

const datumOf = (beliefs: LensBeliefs, { setup, of, value, sigma }: Reading): Datum => ({
  value,
  sigma,
  predict: (unknowns) => predicted(lensWith(beliefs, unknowns), setup, of),
});

/**
 * Readings that a lens as its sheet has it can't give (nothing is in focus there, or at infinity) say
 * nothing of it.
 */
export function saysSomething(beliefs: LensBeliefs, reading: Reading): boolean {
  const middles = beliefs.beliefs.map(({ middle }) => middle);
  return Number.isFinite(datumOf(beliefs, reading).predict(middles));
}

/** @param readings each says something of the lens */
export const fitLens = (beliefs: LensBeliefs, readings: readonly Reading[]): LensFit => ({
  beliefs,
  ...mostLikely(
    beliefs.beliefs,
    readings.map((reading) => datumOf(beliefs, reading)),
  ),
});

/**
 * The lens so far along each axis of what is uncertain of it.
 *
 * @param stands standard deviations, one an axis; those left out are 0
 */
export function lensAt({ beliefs, values, axes }: LensFit, stands: Vector = []): LensPart {
  const there = values.map((value, unknown) =>
    axes.reduce((sum, axis, index) => sum + (stands[index] ?? 0) * axis[unknown]!, value),
  );
  return lensWith(beliefs, there);
}

/** How sure one number that follows from the lens is: one standard deviation. */
export const sureness = (fit: LensFit, predict: (lens: LensPart) => number): number =>
  sigmaOf(fit, (unknowns) => predict(lensWith(fit.beliefs, unknowns)));

/** Farther from what all else says than this many standard deviations, a reading doesn't fit. */
const FAR = 3;

/**
 * Readings that don't fit, worst first. Each is judged by a fit without it, so that it can't vouch
 * for itself, and without those that fit worse, which would make others look wrong.
 */
export function misfits(beliefs: LensBeliefs, readings: readonly Reading[]): readonly Misfit[] {
  const found: Misfit[] = [];
  const left = new Set(readings.keys());
  while (left.size > 0) {
    const judged = [...left].map((index) => {
      const others = [...left].filter((other) => other !== index);
      return {
        index,
        ...distance(
          beliefs,
          readings[index]!,
          others.map((at) => readings[at]!),
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
function distance(beliefs: LensBeliefs, reading: Reading, others: readonly Reading[]) {
  const datum = datumOf(beliefs, reading);
  const fit = fitLens(beliefs, others);
  const expected = datum.predict(fit.values);
  const spread = Math.hypot(datum.sigma, sigmaOf(fit, datum.predict));
  return { expected, far: Math.abs(datum.value - expected) / spread };
}
