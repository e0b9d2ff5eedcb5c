/** Turns places into ranges. This happens last, and nowhere before. */
import type { Position, Range } from '../api/located.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import type { Chunk } from '../text/chunk.ts';
import type { MapNode, Node, Pair, Path, ScalarNode, Span } from '../text/tree.ts';
import type { Entries } from './entries.ts';
import type { Store } from './store.ts';

/** A span inside a chunk of a file. */
interface ChunkSpan {
  readonly chunk: EntryId;
  readonly span: Span;
}

const START: Position = { line: 0, character: 0 };

export class Locator {
  readonly #store: Store;
  readonly #entries: Entries;
  /** Index of each chunk id, per list of ids: an edit that keeps the chunks keeps the list. */
  readonly #indices = new WeakMap<readonly EntryId[], ReadonlyMap<EntryId, number>>();

  constructor(store: Store, entries: Entries) {
    this.#store = store;
    this.#entries = entries;
  }

  /** The range of a place; if it doesn't exist (yet), that of the nearest thing that does. */
  spanOf(place: Place): ChunkSpan | undefined {
    const { file, entry, span: within } = place;
    if (within) return { chunk: entry, span: within };
    if (entry === '') return this.#fileSpan(file);
    const source = this.#entries.source(file, entry);
    if (!source) return this.#store.chunk(file, entry) ? wholeChunk(entry) : undefined;
    const { tree } = this.#entries.parsed(file, source.chunk);
    const root = tree?.pairs[0];
    if (!root) return wholeChunk(source.chunk);
    const { pair, node, reached } = descend(root, [...source.within, ...place.path]);
    const span = reached ? partSpan(pair, node, place) : pair.key.span;
    return { chunk: source.chunk, span };
  }

  /** The chunk that a place is found in, as `spanOf` would. */
  chunkHolding({ file, entry, span }: Place): EntryId | undefined {
    if (span) return entry;
    if (entry === '') return this.#fileSpan(file)?.chunk;
    const source = this.#entries.source(file, entry);
    return source ? source.chunk : this.#store.chunk(file, entry) && entry;
  }

  rangeOf(place: Place): Range {
    const found = this.spanOf(place);
    return found ? this.rangeIn(place.file, found) : { start: START, end: START };
  }

  rangeIn(file: FileId, { chunk, span }: ChunkSpan): Range {
    const text = this.#store.text(file);
    const index = this.indexOf(file, chunk);
    if (!text || index === undefined) return { start: START, end: START };
    return {
      start: text.positionOf(index, span.start),
      end: text.positionOf(index, span.end),
    };
  }

  /** The chunk under an id as it is now. */
  chunkOf(file: FileId, chunk: EntryId): Chunk | undefined {
    const index = this.indexOf(file, chunk);
    return index === undefined ? undefined : this.#store.text(file)?.chunks[index];
  }

  /** The line that a chunk begins on. */
  firstLineOf(file: FileId, chunk: EntryId): number {
    const index = this.indexOf(file, chunk);
    return index === undefined ? 0 : this.firstLineAt(file, index);
  }

  /** While it stands, every chunk of every file begins on the line that it began on. */
  get layout(): number {
    return this.#store.layout;
  }

  /** The list of a file's chunks: the same object for as long as none comes, goes or moves. */
  chunkIds(file: FileId): readonly EntryId[] {
    return this.#store.chunkIds(file);
  }

  /** A file's chunks, index for index with that list; an edit changes them in place. */
  chunksOf(file: FileId): readonly Chunk[] {
    return this.#store.text(file)?.chunks ?? [];
  }

  firstLineAt(file: FileId, index: number): number {
    return this.#store.text(file)?.positionOf(index, 0).line ?? 0;
  }

  indexOf(file: FileId, chunk: EntryId): number | undefined {
    const ids = this.#store.chunkIds(file);
    let indices = this.#indices.get(ids);
    if (!indices) {
      indices = new Map(ids.map((id, index) => [id, index]));
      this.#indices.set(ids, indices);
    }
    return indices.get(chunk);
  }

  /** A finding about a file as a whole is shown at its first word. */
  #fileSpan(file: FileId): ChunkSpan | undefined {
    const [first] = this.#store.chunkIds(file);
    for (const chunk of this.#store.chunkIds(file)) {
      const root = this.#entries.parsed(file, chunk).tree?.pairs[0];
      if (root) return { chunk, span: root.key.span };
    }
    return first === undefined ? undefined : { chunk: first, span: { start: 0, end: 0 } };
  }
}

const wholeChunk = (chunk: EntryId): ChunkSpan => ({ chunk, span: { start: 0, end: 1 } });

/** Follows `path` from a pair's value as far as it goes. */
function descend(root: Pair, path: Path): { pair: Pair; node: Node | null; reached: boolean } {
  let pair = root;
  let node: Node | null = root.value;
  for (const step of path) {
    if (node?.kind === 'map') {
      const next: Pair | undefined = firstPair(node, String(step));
      if (!next) return { pair, node, reached: false };
      pair = next;
      node = next.value;
    } else if (node?.kind === 'seq' && typeof step === 'number') {
      const item: Node | null = node.items[step] ?? null;
      if (item === null) return { pair, node, reached: false };
      node = item;
    } else return { pair, node, reached: false };
  }
  return { pair, node, reached: true };
}

const firstPair = (map: MapNode, key: string): Pair | undefined =>
  map.pairs.find((pair) => pair.key.text === key);

const isOneLine = ({ style }: ScalarNode): boolean => style !== 'literal' && style !== 'folded';

function partSpan(pair: Pair, node: Node | null, { part, path }: Place): Span {
  if (part === 'key') return pair.key.span;
  if (part === 'pair') return pair.span;
  if (node === null) return pair.key.span;
  if (node.kind === 'scalar') return isOneLine(node) ? node.span : pair.key.span;
  // A whole entry is named by its key: marking all its lines would hide everything else.
  if (path.length === 0) return pair.key.span;
  return node.kind === 'map' && !node.flow ? pair.key.span : node.span;
}
