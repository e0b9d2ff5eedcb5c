/**
 * The shape of the language as a table: what each key of each kind of entry takes. Generated from
 * the schema; lowering, wording, hover and completion read it.
 */
import type { QuantityId } from '../quantity/index.ts';
import type { DefName } from './generated/shapes.ts';

/** Where a name is looked up. */
export type Group =
  | 'bodies'
  | 'lenses'
  | 'tubes'
  | 'converters'
  | 'close-ups'
  | 'filters'
  | 'heads'
  | 'stands'
  | 'rigs'
  | 'lights'
  | 'subjects'
  | 'shots'
  /** The recording settings of the body in the shot's own rig. */
  | 'recordings';

export type Shape =
  | { readonly kind: 'quantity'; readonly of: QuantityId }
  | { readonly kind: 'enum'; readonly values: readonly string[] }
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
}

export interface RecordShape {
  readonly title: string;
  readonly description: string;
  readonly keys: Readonly<Record<string, KeyShape>>;
}
