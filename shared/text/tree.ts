/** The result of reading a chunk, for everything that comes after the text. */
export type { MapNode, Node, Pair, Path, ScalarNode, Span } from '../syntax/tree.ts';
