/**
 * Previous values: values as they were before somebody began to delete them, so that they can be
 * offered again. A value is kept with its position in the text, which moves as the text does, and
 * with its path. It is offered only if both still match, and so never for another field, whatever
 * was renamed, moved or removed since.
 */
import type { EntryId, FileId } from '../plan/place.ts';
import type { Chunk } from '../text/chunk.ts';
import type { ChunkedText, TextRange } from '../text/chunked-text.ts';
import type { MapNode, Node, Path, Span } from '../text/tree.ts';
import { type PendingEdit, pendingEdit } from './pending-edit.ts';
import type { Store } from './store.ts';

/** Number of values kept of a file, the latest ones. */
const MOST_VALUES = 32;
/** Most characters of one value. */
const MOST_CHARACTERS = 1000;

/** A value on one line: a scalar, or a mapping or list in braces or brackets. */
export interface FormerValue {
  /** As it was written, quotes and all. */
  readonly source: string;
  /** As it is read. */
  readonly text: string;
}

interface Mark extends FormerValue {
  /** From the top of the file. */
  readonly path: Path;
  /** Position of its text, or of what replaced it. */
  chunk: Chunk;
  start: number;
  end: number;
  /** Whether the last edit wrote something here: the next deletion starts a new value. */
  written: boolean;
}

interface OfFile {
  /** The latest last. */
  readonly marks: readonly Mark[];
  /** The value that the last edit was made in. */
  readonly latest: Mark | null;
}

const NONE: OfFile = { marks: [], latest: null };
const BREAK = /[\r\n]/;

type TreeOf = (file: FileId, chunk: EntryId) => MapNode | null;

export class FormerValues {
  readonly #store: Store;
  readonly #treeOf: TreeOf;
  readonly #files = new Map<FileId, OfFile>();

  constructor(store: Store, treeOf: TreeOf) {
    this.#store = store;
    this.#treeOf = treeOf;
  }

  /** Must be called for each edit of a file; `apply` makes the edit. */
  edit(file: FileId, range: TextRange, newText: string, apply: () => void): void {
    const text = this.#store.text(file);
    const edit = text && pendingEdit(text, range, newText);
    if (!text || !edit) {
      apply();
      return;
    }
    const { marks, latest } = this.#after(file, edit, this.#files.get(file) ?? NONE);
    const here = marks.filter(({ chunk }) => chunk === edit.chunk);
    const base = here.length > 0 ? text.absolute(edit.index, 0) : 0;
    apply();
    for (const mark of here) placeAnew(mark, text, base);
    if (marks.length > 0) this.#files.set(file, { marks: marks.slice(-MOST_VALUES), latest });
    else this.#files.delete(file);
  }

  forget(file: FileId): void {
    this.#files.delete(file);
  }

  /**
   * The previous value at `path`, whose value (or the place for it) is at `range`; null: there is
   * none.
   */
  at(file: FileId, range: TextRange, path: Path): FormerValue | null {
    const text = this.#store.text(file);
    const { marks } = this.#files.get(file) ?? NONE;
    if (!text || marks.length === 0) return null;
    const [one, two] = [text.locate(range.start), text.locate(range.end)];
    const chunk = text.chunks[one.index];
    if (!chunk || one.index !== two.index) return null;
    const [from, to] = [one.offset, two.offset];
    const mark = marks.findLast(
      (each) =>
        each.chunk === chunk &&
        each.start <= to &&
        from <= each.end &&
        isSame(each.path, path) &&
        isBlank(chunk.text.slice(each.start, from) + chunk.text.slice(to, each.end)),
    );
    const isThere = mark?.source === chunk.text.slice(from, to);
    return mark && !isThere ? { source: mark.source, text: mark.text } : null;
  }

  /** The kept values after an edit, and the one that the edit was made in. */
  #after(file: FileId, edit: PendingEdit, { marks, latest }: OfFile): OfFile {
    // An edit over several entries drops their values; the others stay.
    if (edit.over.length > 1)
      return { marks: marks.filter(({ chunk }) => !edit.over.includes(chunk)), latest: null };
    const left: Mark[] = [];
    let within: Mark | null = null;
    for (const mark of marks) {
      const how = mark.chunk === edit.chunk ? moved(mark, edit) : 'kept';
      if (how === 'lost') continue;
      if (how === 'written') within = mark;
      left.push(mark);
    }
    const { removed, added } = edit;
    const takes = !isBlank(removed) && !BREAK.test(removed + added);
    const begins = takes && (!within || (within.written && within !== latest));
    const fresh = begins ? this.#markOf(file, edit) : null;
    if (fresh) return { marks: [...left.filter((mark) => mark !== within), fresh], latest: fresh };
    if (within) within.written = added !== '' || (within.written && removed === '');
    return { marks: left, latest: within };
  }

  /** The value that an edit takes out of, with the place that is left of it. */
  #markOf(file: FileId, edit: PendingEdit): Mark | null {
    const { chunk, from, to, removed, added, index } = edit;
    const id = this.#store.chunkIds(file)[index];
    const tree = id === undefined ? null : this.#treeOf(file, id);
    const comment = /(^|\s)#.*$/.exec(removed)?.index ?? removed.length;
    const body = removed.slice(0, comment);
    const start = from + (body.length - body.trimStart().length);
    const found = holding(tree, { start, end: from + body.trimEnd().length });
    const source = found && chunk.text.slice(found.node.span.start, found.node.span.end);
    if (!found || !source || source.length > MOST_CHARACTERS || BREAK.test(source)) return null;
    const { span } = found.node;
    const left = Math.min(from, span.start);
    return {
      source,
      text: found.node.kind === 'scalar' ? found.node.text : source,
      path: [...chunk.path, ...found.path],
      chunk,
      start: left,
      end: Math.max(to, span.end) + added.length - (to - from),
      written: added !== '',
    };
  }
}

/** Moves a kept value with an edit of its chunk, and says how the edit affected it. */
function moved(mark: Mark, edit: PendingEdit): 'kept' | 'written' | 'lost' {
  const { chunk, from, to, removed, added } = edit;
  const { start, end } = mark;
  const shift = added.length - removed.length;
  if (from > end) return 'kept';
  if (to < start) {
    mark.start += shift;
    mark.end += shift;
    return 'kept';
  }
  if (BREAK.test(removed + added)) return from === end && removed === '' ? 'kept' : 'lost';
  // If a neighbour is removed, another value may move to this place.
  const outside =
    chunk.text.slice(from, Math.min(to, start)) + chunk.text.slice(Math.max(from, end), to);
  if (!isBlank(outside)) return 'lost';
  mark.start = Math.min(from, start);
  mark.end = Math.max(to, end) + shift;
  return 'written';
}

/** The same place of a text that has been cut into chunks again. */
function placeAnew(mark: Mark, text: ChunkedText, base: number): void {
  const { index, offset } = text.locateOffset(base + mark.start);
  mark.chunk = text.chunks[index] ?? mark.chunk;
  mark.end += offset - mark.start;
  mark.start = offset;
}

/** The deepest value below an entry's own pair that holds `span`, and its path from there. */
function holding(tree: MapNode | null, span: Span): { node: Node; path: Path } | null {
  const holds = (node: Node | null): node is Node =>
    node !== null && node.span.start <= span.start && span.end <= node.span.end;
  let node = tree?.pairs[0]?.value ?? null;
  if (!holds(node)) return null;
  const path: (string | number)[] = [];
  for (;;) {
    const [step, below]: [string | number, Node | null] = belowOf(node, holds) ?? ['', null];
    if (below === null) {
      const isWhole = node.kind === 'scalar' || node.flow;
      return isWhole ? { node, path } : null;
    }
    path.push(step);
    node = below;
  }
}

function belowOf(
  node: Node,
  holds: (node: Node | null) => node is Node,
): [string | number, Node] | null {
  if (node.kind === 'map') {
    const pair = node.pairs.find(({ value }) => holds(value));
    return pair?.value ? [pair.key.text, pair.value] : null;
  }
  if (node.kind !== 'seq') return null;
  const index = node.items.findIndex(holds);
  const item = node.items[index];
  return item ? [index, item] : null;
}

const isBlank = (text: string): boolean => text.trim() === '';

const isSame = (a: Path, b: Path): boolean =>
  a.length === b.length && a.every((step, index) => step === b[index]);
