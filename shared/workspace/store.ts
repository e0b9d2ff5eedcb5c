/**
 * The texts that the core has been given, chunk by chunk, as inputs of the graph. An edit sets
 * only the inputs of the chunks that it changed. A chunk keeps its id, and with it all results,
 * while lines above are added or removed.
 */

import type { Refusal } from '../api/facade.ts';
import { sameData } from '../engine/equal.ts';
import { Graph, type Input } from '../engine/graph.ts';
import { entryAt, looseId, nth } from '../plan/entry-id.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Chunk } from '../text/chunk.ts';
import { ChunkedText, type TextChange, type TextRange } from '../text/chunked-text.ts';
import { forgetKeys, type Key, keyOf, renewKeys } from './keys.ts';

/** Whether a file's text is loaded, has been requested, or is not available (and why). */
type FileState =
  | { readonly state: 'unknown' }
  | { readonly state: 'given' }
  | { readonly state: 'refused'; readonly why: Refusal };

const UNKNOWN: FileState = { state: 'unknown' };
const GIVEN: FileState = { state: 'given' };

/** So many replaced chunks are held for whoever shows what stands in them. */
const MOST_REPLACED = 256;

interface OpenText {
  readonly text: ChunkedText;
  /** Ids of `text.chunks`, index for index. */
  ids: EntryId[];
}

export class Store {
  readonly graph = new Graph();
  readonly #open = new Map<FileId, OpenText>();
  readonly #chunk: Input<Chunk | undefined, Key> = this.graph.input('chunk', undefined);
  readonly #ids: Input<readonly EntryId[]> = this.graph.input('ids', [], sameData);
  readonly #state: Input<FileState> = this.graph.input('file', UNKNOWN, sameData);
  #layout = 0;
  #replaced: Chunk[] = [];

  /**
   * Another number whenever a chunk of any file may have come, gone or begun on another line.
   * Reading it is not recorded.
   */
  get layout(): number {
    return this.#layout;
  }

  /** The chunks that others took the place of since the last time, while the layout stood. */
  takeReplaced(): readonly Chunk[] {
    const replaced = this.#replaced;
    if (replaced.length > 0) this.#replaced = [];
    return replaced;
  }

  /** The chunk under `id`; undefined where there is none. Recorded as read. */
  chunk(file: FileId, id: EntryId): Chunk | undefined {
    return this.#chunk.get(keyOf(file, id));
  }

  /** All ids of a file's chunks, in the order of the text. Recorded as read. */
  ids(file: FileId): readonly EntryId[] {
    return this.#ids.get(file);
  }

  state(file: FileId): FileState {
    return this.#state.get(file);
  }

  /** The text as it stands now, for positions; reading it is not recorded. */
  text(file: FileId): ChunkedText | undefined {
    return this.#open.get(file)?.text;
  }

  /** Ids index for index with `text(file).chunks`; reading them is not recorded. */
  chunkIds(file: FileId): readonly EntryId[] {
    return this.#open.get(file)?.ids ?? [];
  }

  files(): readonly FileId[] {
    return [...this.#open.keys()];
  }

  give(file: FileId, source: string): void {
    const before = this.#open.get(file);
    const text = ChunkedText.from(source);
    const open: OpenText = { text, ids: [] };
    this.#open.set(file, open);
    this.#setAll(file, open, before);
    this.#state.set(file, GIVEN);
    this.#tidy();
  }

  refuse(file: FileId, why: Refusal): void {
    this.#drop(file);
    this.#state.set(file, { state: 'refused', why });
  }

  close(file: FileId): void {
    this.#drop(file);
    this.#state.delete(file);
    this.graph.sweep(true);
  }

  /**
   * Applies one edit; ranges are lines and UTF-16 columns from 0, clamped to the text.
   * @returns what takes it back, the latest edit first: each chunk is then the very one that it was
   */
  edit(file: FileId, range: TextRange, newText: string): () => void {
    const open = this.#open.get(file);
    if (!open) return () => {};
    return this.#took(file, open, open.text.applyChange(range, newText));
  }

  /** The same by offsets from the start of the file. */
  replace(file: FileId, from: number, to: number, newText: string): () => void {
    const open = this.#open.get(file);
    return open ? this.#took(file, open, open.text.replace(from, to, newText)) : () => {};
  }

  #took(file: FileId, open: OpenText, { removed, added, at, undo }: TextChange): () => void {
    this.#exchange(file, open, removed, added, at);
    this.#tidy();
    return () => {
      undo();
      this.#exchange(file, open, added, removed, at);
    };
  }

  /** Data of names that no text has any more is dropped when there is much of it. */
  #tidy(): void {
    if (this.graph.tidy()) renewKeys();
  }

  /** Makes the graph's inputs what `open` has become: at `at`, `added` stand where `removed` stood. */
  #exchange(
    file: FileId,
    open: OpenText,
    removed: readonly Chunk[],
    added: readonly Chunk[],
    at: number,
  ): void {
    const samePaths =
      removed.length === added.length &&
      removed.every((chunk, index) => samePath(chunk, added[index]!));
    if (samePaths) {
      if (removed.some(({ breaks }, index) => breaks !== added[index]!.breaks)) this.#layout++;
      this.#replaced.push(...removed);
      // Nobody asks for them: whoever does later has to look at everything.
      if (this.#replaced.length > MOST_REPLACED) {
        this.#replaced = [];
        this.#layout++;
      }
      added.forEach((chunk, index) => {
        this.#chunk.set(keyOf(file, open.ids[at + index]!), chunk);
      });
      return;
    }
    this.#setAll(file, open, { ids: open.ids });
  }

  #setAll(file: FileId, open: OpenText, before?: { ids: readonly EntryId[] }): void {
    this.#layout++;
    open.ids = idsOf(open.text.chunks);
    const now = new Set(open.ids);
    for (const id of before?.ids ?? []) if (!now.has(id)) this.#chunk.delete(keyOf(file, id));
    open.ids.forEach((id, index) => {
      this.#chunk.set(keyOf(file, id), open.text.chunks[index]);
    });
    this.#ids.set(file, open.ids);
  }

  #drop(file: FileId): void {
    const open = this.#open.get(file);
    if (!open) return;
    this.#layout++;
    for (const id of open.ids) this.#chunk.delete(keyOf(file, id));
    this.#ids.delete(file);
    this.#open.delete(file);
    forgetKeys(file);
  }
}

const samePath = (a: Chunk, b: Chunk): boolean =>
  a.kind === b.kind &&
  a.path.length === b.path.length &&
  a.path.every((step, index) => step === b.path[index]);

function idsOf(chunks: readonly Chunk[]): EntryId[] {
  const seen = new Map<EntryId, number>();
  let loose = 0;
  return chunks.map((chunk) => {
    if (chunk.kind === 'loose') return looseId(++loose);
    const id = entryAt(...chunk.path);
    const count = (seen.get(id) ?? 0) + 1;
    seen.set(id, count);
    return nth(id, count);
  });
}
