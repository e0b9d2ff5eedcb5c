/**
 * A plan's text is kept as a row of chunks: one per entry (a shot, a lens, a rig …), one per
 * short top-level field (`title: …`), one per section header (`shots:`), and one for each run of
 * lines that belong nowhere. Joined in order they are the file, character for character.
 */

import type { MapNode } from '../syntax/tree.ts';
import type { TextProblem } from './problem.ts';

export type ChunkKind =
  /** `shots:` or `  bodies:` with nothing behind it: its entries follow as chunks of their own. */
  | 'header'
  /** A named entry (`  drift:` and its lines) or a whole top-level field (`title: Tide Glass`). */
  | 'entry'
  /** Lines that are no part of a plan: leading comments and blanks, merge markers, `---`. */
  | 'loose';

export interface Chunk {
  readonly kind: ChunkKind;
  /** Keys from the top: ['shots', 'drift'], ['kit', 'bodies', 'body-a'], ['title']; [] if loose. */
  readonly path: readonly string[];
  /** Column of the chunk's key, in characters. */
  readonly indent: number;
  /** The text with its line breaks, as it stands in the file. */
  readonly text: string;
  /** Line breaks in `text` (CR LF counts once, a lone CR counts: LSP's lines). */
  readonly breaks: number;
}

/** What a chunk's text says. */
export interface ParsedChunk {
  /** One pair, key to value, for an entry or a header; null for loose lines or when unreadable. */
  readonly tree: MapNode | null;
  readonly problems: readonly TextProblem[];
}
