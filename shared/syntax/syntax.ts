/**
 * A text as it was parsed, sound or not. Nothing is lost: each character stands in a node, in a
 * defect, or is trivia (blanks, breaks, comments and the marks between nodes), which the ranges
 * leave over.
 */
import type { MapNode, Node, Span } from './tree.ts';

/** Why a text is not, or not only, what the common shapes are made of. */
export type DefectKind =
  /** Legal YAML that the parser leaves to `yaml`, or what only `yaml` can tell to be none. */
  | 'uncommon'
  /** A tab, or a lone return, where spaces and line feeds tell the parts apart. */
  | 'blank'
  /** A line that holds no key, no item and no value. */
  | 'stray'
  /** A key without its colon. */
  | 'no-colon'
  /** Text behind a whole value, up to the line's end or to the next comma. */
  | 'behind'
  /** A value that nothing may start as it does. */
  | 'start'
  /** A colon within a value. */
  | 'colon'
  | 'open-quote'
  | 'bad-escape'
  | 'open-bracket'
  /** A closing bracket of the other kind. */
  | 'wrong-bracket'
  /** Nothing between two commas, or no key before a colon. */
  | 'hole'
  /** A line left of where it must stand. */
  | 'column'
  /** A key in another column than the others of its mapping. */
  | 'out-of-line'
  /** Something that stands where a value was already. */
  | 'second';

export interface Defect {
  readonly kind: DefectKind;
  readonly span: Span;
}

export interface Syntax {
  readonly root: MapNode;
  /** In the order in which they were met; none: the tree is what YAML 1.2.2 says. */
  readonly defects: readonly Defect[];
  /** By the first value of a key or an item: what else stands where only one may. */
  readonly more: ReadonlyMap<Node, readonly Node[]>;
  readonly marks: Marks;
}

/**
 * Where a collection's parts are told apart: a list's dashes; in braces and brackets the opening one,
 * the commas and the closing one, or the end where it isn't closed.
 */
export type Marks = ReadonlyMap<Node, readonly number[]>;

/** A mapping that holds the text, with the key that it stands under. */
export interface Outer {
  readonly column: number;
  readonly key: string;
}
