/**
 * A plan's text is kept as a row of chunks: one per entry (a shot, a lens, a rig …), one per
 * short top-level field (`title: …`), one per section header (`shots:`), and one for each run of
 * lines that belong nowhere. Joined in order they are the file, character for character.
 */
import type { MapNode, Span } from './tree.ts';

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

/** One thing wrong with the text itself, found before anything is understood of the plan. */
export interface TextProblem {
  readonly rule:
    | 'syntax'
    | 'outside-the-profile'
    | 'misread-scalar'
    | 'duplicate-name'
    | 'too-much';
  /** Which wording applies, e.g. 'unclosed-quote'; the words stand in rules/text/. */
  readonly code: string;
  readonly span: Span;
  /** What the wording needs, as text. */
  readonly args: Readonly<Record<string, string>>;
  readonly fixes: readonly TextFix[];
  /** A further place that the problem follows from (the first of two equal keys). */
  readonly related?: Span;
  /** What of the text it leaves in doubt, where that is more than its place. */
  readonly doubt?: Span;
}

export interface TextFix {
  /** Which wording applies, e.g. 'quote', 'close-quote', 'use-a-point'. */
  readonly code: string;
  readonly args: Readonly<Record<string, string>>;
  readonly edits: readonly { readonly span: Span; readonly text: string }[];
}

/** What a chunk's text says. */
export interface ParsedChunk {
  /** One pair, key to value, for an entry or a header; null for loose lines or when unreadable. */
  readonly tree: MapNode | null;
  readonly problems: readonly TextProblem[];
}
