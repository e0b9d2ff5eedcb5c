/** What every kind of quantity offers: how it is recognised, read and written. */
import type { RoughForm } from './rough.ts';

export type Failure = {
  readonly ok: false;
  readonly code:
    | 'no-unit'
    | 'unknown-unit'
    | 'not-a-number'
    | 'form'
    | 'out-of-range'
    | 'not-whole'
    | 'decimal-comma';
  /** Whole texts that would be right in its place, best first, each in its usual spelling. */
  readonly likely: readonly string[];
  /** The part of the text that is at fault, where one part is. */
  readonly detail?: string;
};

export type Parsed<T> =
  | {
      readonly ok: true;
      readonly value: T;
      /** The usual spelling, only where the text isn't it. */
      readonly usual?: string;
    }
  | Failure;

export interface QuantityKind<T> {
  readonly id: string;
  /** What it is, as a noun: 'length', 'f-number'. */
  readonly title: string;
  /** Units as they are usually written; empty for plain numbers. */
  readonly units: readonly string[];
  /** Source of an anchored regular expression that matches exactly what `parse` accepts. */
  readonly pattern: string;
  /** A plain number, which a JSON instance may hold as a number. */
  readonly bare?: 'number' | 'integer';
  /** Words that may stand in its place: 'auto', 'none', 'closest'. */
  readonly words: readonly string[];
  /** In the usual spelling. */
  readonly examples: readonly string[];
  /** How it is written where it is known only roughly; kinds without it are never rough. */
  readonly rough?: RoughForm<T>;
  /** Never throws. */
  parse(text: string): Parsed<T>;
  /** The shortest exact text for a plan, in the unit `as` (one of `units`) or the kind's own. */
  print(value: T, as?: string): string;
}
