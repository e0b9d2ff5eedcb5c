/** What a bench says of a light, a body, a converter or a close-up lens, as numbers to fit. */
import type { Belief, Datum, Likely } from '../lens-fit/most-likely.ts';
import { mostLikely } from '../lens-fit/most-likely.ts';
import type { Field, Known } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import type { BenchGap } from './lens-bench.ts';

export type EntryBenchKey =
  | 'illuminance'
  | 'aperture'
  | 'found'
  | 'field'
  | 'light-lost'
  | 'working-distance';

/** One measured value of a row. */
export interface EntryValue {
  /** From 1. */
  readonly row: number;
  readonly key: EntryBenchKey;
  readonly at: Place;
  readonly datum: Datum;
  /** A value of the datum as it is written in the row. */
  written(value: number): number;
}

export interface EntryRows {
  readonly values: readonly EntryValue[];
  readonly gaps: readonly BenchGap[];
}

export interface EntryBench extends EntryRows {
  readonly beliefs: readonly Belief[];
}

/** @param bench with at least one value */
export const likelyOf = ({ beliefs, values }: EntryBench): Likely =>
  mostLikely(
    beliefs,
    values.map(({ datum }) => datum),
  );

/** The values and gaps of all rows that can be read. */
export function rowsOf<R>(
  rows: readonly Field<R>[],
  read: (row: Known<R>, number: number) => EntryRows,
): EntryRows {
  const all = rows.map((row, index) => (row.state === 'known' ? read(row, index + 1) : NOTHING));
  return {
    values: all.flatMap(({ values }) => values),
    gaps: all.flatMap(({ gaps }) => gaps),
  };
}

/** What is broken has a finding of its own. */
export const NOTHING: EntryRows = { values: [], gaps: [] };

export const gapOf = (row: number, at: Place, because: string): EntryRows => ({
  values: [],
  gaps: [{ row, at, because }],
});

/** Nothing is known more exactly than this; a range of no width is not taken by its word. */
const LEAST_SHARE = 1e-4;

/** One standard deviation: half of half the range, or of what is usual. */
export const sigmaIn = ({ value, range }: Known<number>, usual: number): number =>
  Math.max(range ? (range.high - range.low) / 2 : usual, LEAST_SHARE * Math.abs(value)) / 2;

/** The same in stops, of a value that is proportional to the light. */
export const sigmaStops = ({ range }: Known<number>, usual: number): number =>
  Math.max(range ? Math.log2(range.high / range.low) / 2 : usual, LEAST_SHARE) / 2;

/** Within its range, or so far to either side. */
export const givenBelief = (field: Known<number>, usual: number): Belief => ({
  middle: field.value,
  sigma: sigmaIn(field, usual),
});

/** Of what only the rows say: where they put it, as good as free. */
export const freeBelief = (middle: number, sigma: number): Belief => ({ middle, sigma });
