/**
 * The shape of the language as a table: what each key of each kind of entry takes. Generated from
 * the schema; lowering, wording, hover and completion read it.
 */
import type { QuantityId } from '../quantity/index.ts';
import type { DefName, Group, Spaces } from './generated/names.ts';

export type Shape =
  | {
      readonly kind: 'quantity';
      readonly of: QuantityId;
      /** A range may stand in its place. */
      readonly rough?: true;
    }
  | {
      readonly kind: 'enum';
      readonly values: readonly string[];
      /** Other words for its values: 'push' means 'push-in'. */
      readonly also?: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'ref'; readonly groups: readonly Group[] }
  /** A name of one's own choosing, or of a check. */
  | { readonly kind: 'name' }
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'record'; readonly of: DefName }
  | { readonly kind: 'word-or-record'; readonly words: readonly string[]; readonly of: DefName }
  | { readonly kind: 'list'; readonly item: Shape }
  /** By name; `names`: the groups that its names refer to, where they do. */
  | { readonly kind: 'map'; readonly item: Shape; readonly names?: readonly Group[] };

export interface KeyShape {
  readonly shape: Shape;
  readonly required: boolean;
  readonly title: string;
  readonly description: string;
  /** As YAML text, records in flow style. */
  readonly examples: readonly string[];
  /** Other words for it, in small letters with hyphens: 'weight' for 'mass'. */
  readonly also?: readonly string[];
}

export interface RecordShape {
  readonly title: string;
  readonly description: string;
  readonly keys: Readonly<Record<string, KeyShape>>;
}

/** A kind of entry: something with a name, that others may refer to by it. */
export interface EntryShape {
  readonly def: DefName;
  /** Where entries of it are held: 'kit/tubes', 'shots'; null: in entries of another kind. */
  readonly home: string | null;
  /** What it is called in a sentence, in English: see `inLanguage`. */
  readonly noun: string;
  /** Who may refer to it: plans that use its file, its own plan alone, or nobody. */
  readonly scope: 'files' | 'plan' | 'edit';
  /** Kinds of one space share their names. */
  readonly space: keyof Spaces;
  /** Keys whose values tell it from its neighbours in an outline, in this order. */
  readonly outline: readonly string[];
  /** What a new one is called and says, where the plan that people start from has none. */
  readonly first: { readonly name: string; readonly keys: readonly string[] } | null;
}
