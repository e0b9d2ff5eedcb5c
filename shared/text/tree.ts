/** What is read of a chunk, as everything after the text knows it. */
export type {
  MapNode,
  Node,
  Pair,
  Path,
  ScalarNode,
  ScalarStyle,
  SeqNode,
  Span,
} from '../syntax/tree.ts';
