/** The state of the split from line to line, and what it knows of each chunk. */
import type { Chunk } from './chunk.ts';

/** Why a chunk is no plain entry. */
export type Oddity =
  | 'missing-colon'
  | 'no-key'
  | 'complex-key'
  | 'conflict-marker'
  | 'document-marker'
  | 'directive';

/** A chunk with the data that only the split knows. */
export interface SplitChunk extends Chunk {
  /** Column that the key should stand at: `indent`, unless it is out of line. */
  readonly meant: number;
  readonly oddity: Oddity | null;
  /** The file's byte order mark leads the text. */
  readonly bom: boolean;
}

/** What is known at the start of a line. */
export interface SplitState {
  /** Nothing of the file was read yet. */
  readonly top: boolean;
  /** Something other than comments was read. */
  readonly started: boolean;
  /** The section whose entries may follow, null in none. */
  readonly section: string | null;
  /** Column of its entries; -1 while none was seen. */
  readonly indent: number;
  readonly group: string | null;
  readonly groupIndent: number;
}

export const startState: SplitState = {
  top: true,
  started: false,
  section: null,
  indent: -1,
  group: null,
  groupIndent: -1,
};

export const sameState = (a: SplitState, b: SplitState): boolean =>
  a === b ||
  (a.top === b.top &&
    a.started === b.started &&
    a.section === b.section &&
    a.indent === b.indent &&
    a.group === b.group &&
    a.groupIndent === b.groupIndent);

export interface SplitRun {
  readonly chunks: SplitChunk[];
  /** State before each of `chunks`, and at last the state behind them. */
  readonly states: SplitState[];
  /** Where the last chunk ends: short of the text where more was needed to know. */
  readonly end: number;
}

/** The cut of `plain` as one of `text`, which is written otherwise; `back` gives the chunks' ends. */
export function cutAsWritten(
  run: SplitRun,
  text: string,
  plain: string,
  back: (end: number) => number,
): SplitRun {
  let read = 0;
  let end = 0;
  const chunks = run.chunks.map((chunk) => {
    const from = end;
    read += chunk.text.length;
    end = read < plain.length ? back(read) : text.length;
    return { ...chunk, text: text.slice(from, end) };
  });
  return { ...run, chunks, end };
}
