/**
 * A text kept as its chunks. An edit joins and splits only the chunks around it. The others keep
 * their identity, so everything calculated from them stays valid. Positions are LSP's: lines from
 * 0, characters in UTF-16 units.
 */

import { contentEnd, lastAtMost, lineStarts } from '../syntax/lines.ts';
import type { Chunk } from './chunk.ts';
import { type Layout, planLayout } from './layout.ts';
import { samePath } from './path.ts';
import { Splitter } from './split.ts';
import {
  type SplitChunk,
  type SplitRun,
  type SplitState,
  sameState,
  startState,
} from './split-state.ts';

export interface TextPosition {
  readonly line: number;
  readonly character: number;
}

export interface TextRange {
  readonly start: TextPosition;
  readonly end: TextPosition;
}

/** An offset said by the chunk that holds it. */
export interface ChunkOffset {
  /** Index into `chunks`. */
  readonly index: number;
  readonly offset: number;
}

export interface TextChange {
  readonly removed: readonly Chunk[];
  readonly added: readonly Chunk[];
  /** Index of the first of either in `chunks`. */
  readonly at: number;
  /** Takes the change back, the latest first: every chunk is the very one that it was. */
  readonly undo: () => void;
}

/**
 * Chunks after an edit that are split again before more are taken in; the number doubles each
 * time.
 */
const FIRST_WINDOW = 4;

export class ChunkedText {
  readonly #layout: Layout;
  #chunks: SplitChunk[];
  /** The state before each chunk. */
  #states: SplitState[];
  /** Lines and characters before each chunk; true up to `#counted`. */
  #lines: number[] = [0];
  #characters: number[] = [0];
  #counted = 0;

  private constructor(text: string, layout: Layout) {
    this.#layout = layout;
    const run = new Splitter(text, layout, true).run(startState);
    this.#chunks = run.chunks;
    this.#states = run.states;
  }

  static from(text: string, layout: Layout = planLayout): ChunkedText {
    return new ChunkedText(text, layout);
  }

  /** The same array as long as the text lives: an edit changes it in place. */
  get chunks(): readonly Chunk[] {
    return this.#chunks;
  }

  /** The whole text; joined on each call. */
  text(): string {
    return this.#chunks.map((chunk) => chunk.text).join('');
  }

  /** Number of UTF-16 units. */
  get length(): number {
    this.#count(this.#chunks.length);
    return this.#characters[this.#chunks.length] as number;
  }

  /** Number of lines, the one behind a last break counted: at least 1. */
  get lineCount(): number {
    this.#count(this.#chunks.length);
    return (this.#lines[this.#chunks.length] as number) + 1;
  }

  /** The place of `offset` in the chunk at `index`; both are clamped. */
  positionOf(index: number, offset: number): TextPosition {
    const at = clamp(index, 0, this.#chunks.length - 1);
    const chunk = this.#chunks[at] as Chunk;
    const starts = startsOf(chunk);
    const within = clamp(offset, 0, chunk.text.length);
    const line = lastAtMost(starts, within);
    this.#count(at);
    return {
      line: (this.#lines[at] as number) + line,
      character: within - (starts[line] as number),
    };
  }

  /** The chunk and offset at a position; what lies outside the text or its line is clamped. */
  locate(position: TextPosition): ChunkOffset {
    this.#count(this.#chunks.length);
    const last = this.#chunks.length - 1;
    if (!(position.line >= 0)) return { index: 0, offset: 0 };
    if (position.line >= this.lineCount) {
      return { index: last, offset: (this.#chunks[last] as Chunk).text.length };
    }
    const wanted = Math.trunc(position.line);
    const index = lastAtMost(this.#lines, wanted, this.#chunks.length);
    const chunk = this.#chunks[index] as Chunk;
    const starts = startsOf(chunk);
    const line = Math.min(wanted - (this.#lines[index] as number), starts.length - 1);
    const start = starts[line] as number;
    const end = contentEnd(chunk.text, start, starts[line + 1]);
    return { index, offset: clamp(start + Math.trunc(position.character || 0), start, end) };
  }

  /** Offset from the start of the file. */
  absolute(index: number, offset: number): number {
    const at = clamp(index, 0, this.#chunks.length - 1);
    this.#count(at);
    return (this.#characters[at] as number) + offset;
  }

  /** The chunk and offset at an offset from the start of the file, clamped. */
  locateOffset(offset: number): ChunkOffset {
    this.#count(this.#chunks.length);
    const within = clamp(offset, 0, this.length);
    const index = lastAtMost(this.#characters, within, this.#chunks.length);
    return { index, offset: within - (this.#characters[index] as number) };
  }

  /** Replaces a range. `removed` and `added` leave out what the edit left as it was. */
  applyChange(range: TextRange, newText: string): TextChange {
    const one = this.locate(range.start);
    const two = this.locate(range.end);
    const [from, to] =
      one.index < two.index || (one.index === two.index && one.offset <= two.offset)
        ? [one, two]
        : [two, one];
    return this.#exchange(from, to, newText);
  }

  /**
   * The same by offsets from the start of the file: between CR and LF, where no position is, one
   * is too.
   */
  replace(from: number, to: number, newText: string): TextChange {
    return this.#exchange(this.locateOffset(from), this.locateOffset(to), newText);
  }

  #exchange(from: ChunkOffset, to: ChunkOffset, newText: string): TextChange {
    const first = this.#restart(from.index);
    const head =
      textOf(this.#chunks, first, from.index) +
      textAt(this.#chunks, from.index).slice(0, from.offset);
    const edited = head + newText + textAt(this.#chunks, to.index).slice(to.offset);
    const made = this.#recut(first, edited, to.index + 1);
    return this.#replace(first, made.run, made.behind);
  }

  /**
   * The split depends on at most the two chunks before, and on the chunk before any loose lines.
   */
  #restart(index: number): number {
    let at = Math.max(0, index - 2);
    while (at > 0 && (this.#chunks[at] as Chunk).kind === 'loose') at--;
    return at;
  }

  /**
   * Splits `edited` and as many of the chunks from `next` on as it takes to agree with the old
   * split.
   */
  #recut(first: number, edited: string, next: number): { run: SplitRun; behind: number } {
    const chunks = this.#chunks;
    const state = this.#states[first] as SplitState;
    for (let window = FIRST_WINDOW; ; window *= 4) {
      const end = Math.min(chunks.length, next + window);
      const text = edited + textOf(chunks, next, end);
      const run = new Splitter(text, this.#layout, end === chunks.length).run(state);
      const agreed = this.#agreement(run, edited.length, next, end);
      if (agreed) return agreed;
      if (end === chunks.length) return { run, behind: chunks.length };
    }
  }

  /** The first old chunk from `next` on that is the same in the new split. */
  #agreement(run: SplitRun, editedLength: number, next: number, end: number) {
    let old = next;
    let offset = editedLength;
    let at = 0;
    for (let index = 0; index < run.chunks.length; index++) {
      while (old < end && offset < at) {
        offset += (this.#chunks[old] as Chunk).text.length;
        old++;
      }
      // An emptied text before the boundary still needs a chunk.
      const isBoundary = old < end && offset === at && index > 0;
      if (
        isBoundary &&
        sameState(run.states[index] as SplitState, this.#states[old] as SplitState)
      ) {
        return {
          run: {
            chunks: run.chunks.slice(0, index),
            states: run.states.slice(0, index + 1),
            end: at,
          },
          behind: old,
        };
      }
      at += (run.chunks[index] as Chunk).text.length;
    }
    return null;
  }

  #replace(first: number, run: SplitRun, behind: number): TextChange {
    const old = this.#chunks.slice(first, behind);
    const made = run.chunks;
    let head = 0;
    while (head < old.length && head < made.length && sameChunk(old[head], made[head])) head++;
    let tail = 0;
    while (
      tail < old.length - head &&
      tail < made.length - head &&
      sameChunk(old[old.length - 1 - tail], made[made.length - 1 - tail])
    ) {
      tail++;
    }
    const removed = old.slice(head, old.length - tail);
    const added = made.slice(head, made.length - tail);
    this.#chunks.splice(first + head, removed.length, ...added);
    const states = this.#states.splice(first, behind - first, ...run.states.slice(0, -1));
    this.#counted = Math.min(this.#counted, first);
    const at = first + head;
    const undo = () => {
      this.#chunks.splice(at, added.length, ...removed);
      this.#states.splice(first, made.length, ...states);
      this.#counted = Math.min(this.#counted, first);
    };
    return { removed, added, at, undo };
  }

  /** Makes the sums before chunk `upTo` true. */
  #count(upTo: number): void {
    for (let index = this.#counted; index < upTo; index++) {
      const chunk = this.#chunks[index] as Chunk;
      this.#lines[index + 1] = (this.#lines[index] as number) + chunk.breaks;
      this.#characters[index + 1] = (this.#characters[index] as number) + chunk.text.length;
    }
    this.#counted = Math.max(this.#counted, upTo);
  }
}

const starts = new WeakMap<Chunk, readonly number[]>();

/** Where a chunk's lines start; one behind a last break belongs to the next chunk, if any. */
function startsOf(chunk: Chunk): readonly number[] {
  let known = starts.get(chunk);
  if (!known) {
    known = lineStarts(chunk.text);
    starts.set(chunk, known);
  }
  return known;
}

const textAt = (chunks: readonly Chunk[], index: number): string => (chunks[index] as Chunk).text;

const textOf = (chunks: readonly Chunk[], from: number, to: number): string => {
  let text = '';
  for (let index = from; index < to; index++) text += (chunks[index] as Chunk).text;
  return text;
};

const clamp = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, Number.isNaN(value) ? low : value));

const sameChunk = (a: SplitChunk | undefined, b: SplitChunk | undefined): boolean =>
  a !== undefined &&
  b !== undefined &&
  a.text === b.text &&
  a.kind === b.kind &&
  a.indent === b.indent &&
  a.meant === b.meant &&
  a.oddity === b.oddity &&
  a.bom === b.bom &&
  samePath(a.path, b.path);
