/**
 * What is assumed of a value that nobody gave: a middle and the ends between which nearly all real
 * things lie. A figure that follows from an assumption carries its width, and whoever gives the
 * value replaces it.
 */
import type { QuantityId } from '../quantity/index.ts';

/** A middle value and its two ends, in the inside unit of the quantity; `low` ≤ `middle` ≤ `high`. */
export interface Prior {
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

/** One line of the table, in words for people; texts are English, see `inLanguage`. */
export interface Assumption {
  /** The key that would say it, in the plan's words; null: no key of a plan does. */
  readonly key: string | null;
  /** What it belongs to: `a lens`. */
  readonly of: string;
  /** What kind of quantity it is; null where the words say it all. */
  readonly quantity: QuantityId | null;
  /** The same for everything, or a text where it depends on other values. */
  readonly value: Prior | { readonly middle: string; readonly ends: string | null };
  readonly source: string;
  /** When it holds, and what it does. */
  readonly note: string;
}

/** A prior that is the same for everything of its kind. */
export const isPrior = (value: Assumption['value']): value is Prior => 'low' in value;
