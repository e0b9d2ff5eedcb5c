/**
 * A lens as it is by its sheet and by what a ruler said of it: the values that are most likely, how
 * sure they are together, and what was measured that doesn't fit.
 */
import type { LensPart } from '../optics/parts.ts';
import type { Vector } from './cholesky.ts';
import { type LensBeliefs, lensWith } from './lens-beliefs.ts';
import { type Misfit, misfitsOf } from './misfits.ts';
import { type Datum, type Likely, mostLikely, sigmaOf, valuesAt } from './most-likely.ts';
import { predictor, type ReadingKind, type Setup } from './reading.ts';

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

function datumOf(beliefs: LensBeliefs, { setup, of, value, sigma }: Reading): Datum {
  const predict = predictor(setup, of);
  return { value, sigma, predict: (unknowns) => predict(lensWith(beliefs, unknowns)) };
}

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
  return lensWith(beliefs, valuesAt({ values, axes }, stands));
}

/** How sure one number that follows from the lens is: one standard deviation. */
export const sureness = (fit: LensFit, predict: (lens: LensPart) => number): number =>
  sigmaOf(fit, (unknowns) => predict(lensWith(fit.beliefs, unknowns)));

/** Readings that don't fit, worst first. */
export const misfits = (beliefs: LensBeliefs, readings: readonly Reading[]): readonly Misfit[] =>
  misfitsOf(
    beliefs.beliefs,
    readings.map((reading) => datumOf(beliefs, reading)),
  );
