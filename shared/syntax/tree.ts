/**
 * The tree that everything after the text reads. Spans are UTF-16 offsets relative to the chunk
 * that holds the node, so that a new line above an entry leaves its tree untouched; they become
 * absolute only at the edge.
 */

/** Half-open range of UTF-16 offsets, relative to the first character of the chunk. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export type ScalarStyle = 'plain' | 'single' | 'double' | 'literal' | 'folded';

/** A scalar as it was written: `text` is its value after unquoting and folding, never converted. */
export interface ScalarNode {
  readonly kind: 'scalar';
  readonly span: Span;
  readonly text: string;
  readonly style: ScalarStyle;
}

export interface Pair {
  readonly key: ScalarNode;
  /** null: nothing stands after the colon. */
  readonly value: Node | null;
  /** From the key's first character to the value's last (the colon where there is no value). */
  readonly span: Span;
}

export interface MapNode {
  readonly kind: 'map';
  readonly span: Span;
  readonly flow: boolean;
  readonly pairs: readonly Pair[];
}

export interface SeqNode {
  readonly kind: 'seq';
  readonly span: Span;
  readonly flow: boolean;
  readonly items: readonly (Node | null)[];
}

export type Node = ScalarNode | MapNode | SeqNode;

/** Keys and indices from an entry's own value downward; [] is the entry itself. */
export type Path = readonly (string | number)[];
