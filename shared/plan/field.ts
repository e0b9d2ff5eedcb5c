/**
 * A field of the typed plan: known, missing or invalid, each with where it stands. Missing and
 * invalid are told apart because they are answered apart: what is missing makes a figure "not
 * known: needs …", what is invalid has its own finding already and silences what reads it.
 */
import type { Ends } from '../quantity/rough.ts';
import type { Place } from './place.ts';

export interface Known<T> {
  readonly state: 'known';
  readonly value: T;
  readonly at: Place;
  /** Written as a range, whose middle is `value`: `50 to 80 mm`, `100 ± 2 mm`. */
  readonly range?: Ends<T>;
}

/** `at` is where it would stand. */
interface Missing {
  readonly state: 'missing';
  readonly at: Place;
}

interface Invalid {
  readonly state: 'invalid';
  readonly at: Place;
}

export type Field<T> = Known<T> | Missing | Invalid;

export const isKnown = <T>(field: Field<T>): field is Known<T> => field.state === 'known';

/** The value, or undefined where it is missing or invalid. */
export const ifKnown = <T>(field: Field<T>): T | undefined =>
  field.state === 'known' ? field.value : undefined;
