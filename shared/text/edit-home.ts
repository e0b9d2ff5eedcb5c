/** What an edit of the text is, and where in the text it is made. */

import type { MapNode, Node, Pair, Path, Span } from '../syntax/tree.ts';
import type { Chunk } from './chunk.ts';

export interface TextEdit {
  /** Index into the text's `chunks`. */
  readonly chunk: number;
  /** Relative to that chunk. */
  readonly span: Span;
  readonly text: string;
}

/** Where a place stands: a chunk and the path below its root, its own keys' last one included. */
export interface Home {
  readonly index: number;
  readonly chunk: Chunk;
  readonly tree: MapNode;
  /** From the chunk's tree downward; the first step is the chunk's own key. */
  readonly path: Path;
}

/** The first pair under `key`, where `parent` is a mapping that has one. */
export const pairIn = (parent: Node | null, key: string | number | undefined): Pair | undefined =>
  parent?.kind === 'map' ? parent.pairs.find((pair) => pair.key.text === key) : undefined;
