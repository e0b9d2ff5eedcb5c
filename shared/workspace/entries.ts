/**
 * The entries of a file, from its chunks: one chunk an entry where the text is laid out in
 * blocks, or entries inside a chunk where a whole section stands in one (`shots: { … }`).
 */

import { sameData } from '../engine/equal.ts';
import type { Query } from '../engine/graph.ts';
import {
  above,
  entryAt,
  inside,
  isInside,
  isLoose,
  keyOfEntry,
  keysOf,
  plainId,
} from '../plan/entry-id.ts';
import type { DefName } from '../plan/generated/names.ts';
import { SHAPES } from '../plan/generated/shapes.ts';
import { lowerClips, lowerEntry, lowerKey } from '../plan/lower.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { ShapeProblem } from '../plan/problem.ts';
import { emptyValue, labelOf, wrongForm } from '../plan/shape-problems.ts';
import { unknownKey } from '../plan/unknown-key.ts';
import type { ParsedChunk } from '../text/chunk.ts';
import { parseChunk } from '../text/parse.ts';
import { nodeAt } from '../text/path.ts';
import { isUnread } from '../text/problems.ts';
import type { Node, Path } from '../text/tree.ts';
import { message } from '../words/message.ts';
import { type EntryKind, entryKindOf } from './entry-kinds.ts';
import { type Key, keyOf, splitKey } from './keys.ts';
import type { Store } from './store.ts';

/** Position of an entry's value: keys below the value of a chunk's own key. */
interface EntrySource {
  readonly chunk: EntryId;
  readonly within: Path;
}

export interface EntryRef extends EntrySource {
  readonly id: EntryId;
  readonly kind: EntryKind;
}

export interface Lowered {
  readonly kind: EntryKind;
  readonly def: DefName | null;
  /** The typed record of an entry; the `Field` of a key or of clips. */
  readonly value: unknown;
  readonly problems: readonly ShapeProblem[];
}

const HERE: Path = [];
const NOTHING: ParsedChunk = { tree: null, problems: [] };

export class Entries {
  readonly #store: Store;
  readonly #parsed: Query<ParsedChunk, Key>;
  readonly #list: Query<readonly EntryRef[]>;
  readonly #source: Query<EntrySource | undefined, Key>;
  readonly #lowered: Query<Lowered | undefined, Key>;
  readonly #unread: Query<readonly string[]>;
  readonly #taken: Query<readonly string[], Key<DefName>>;

  constructor(store: Store) {
    this.#store = store;
    const { graph } = store;
    this.#parsed = graph.query('parse', (key) => {
      const chunk = store.chunk(...splitKey(key));
      return chunk ? parseChunk(chunk) : NOTHING;
    });
    this.#list = graph.query('entries', (file) => this.#listOf(file), sameData);
    this.#source = graph.query('source', (key) => this.#sourceOf(...splitKey(key)), sameData);
    this.#lowered = graph.query('lower', (key) => this.#lower(...splitKey(key)), sameData);
    this.#unread = graph.query('unread-names', (file) => this.#unreadNames(file), sameData);
    this.#taken = graph.query(
      'taken-keys',
      (key: Key<DefName>) => this.#takenIn(...splitKey(key)),
      sameData,
    );
  }

  parsed(file: FileId, chunk: EntryId): ParsedChunk {
    return this.#parsed(keyOf(file, chunk));
  }

  /** All entries of a file in the order of the text, those of unknown sections included. */
  list(file: FileId): readonly EntryRef[] {
    return this.#list(file);
  }

  source(file: FileId, id: EntryId): EntrySource | undefined {
    return this.#source(keyOf(file, id));
  }

  lowered(file: FileId, id: EntryId): Lowered | undefined {
    return this.#lowered(keyOf(file, id));
  }

  /** The value node of an entry; null where nothing stands after its colon. */
  node(file: FileId, source: EntrySource): Node | null {
    const tree = this.parsed(file, source.chunk).tree;
    const value = tree?.pairs[0]?.value ?? null;
    return value === null || source.within.length === 0 ? value : nodeAt(value, source.within);
  }

  #listOf(file: FileId): readonly EntryRef[] {
    const refs: EntryRef[] = [];
    const ids = this.#store.ids(file);
    const filled = holders(ids);
    for (const chunkId of ids) {
      if (isLoose(chunkId)) continue;
      const kind = entryKindOf(chunkId);
      if (kind.kind === 'unknown' && this.#isBelowUnknown(file, chunkId)) continue;
      if (kind.kind !== 'container') refs.push({ id: chunkId, kind, chunk: chunkId, within: HERE });
      else refs.push(...this.#inside(file, chunkId, filled));
    }
    return refs;
  }

  /**
   * Entries of a section that lies in one chunk. A header has its entries in chunks of their own.
   * A header without entries, and a section that is no mapping, are entries themselves, with their
   * problem.
   */
  #inside(file: FileId, chunkId: EntryId, filled: ReadonlySet<EntryId>): EntryRef[] {
    const refs: EntryRef[] = [];
    const itself: EntryRef = {
      id: chunkId,
      kind: { kind: 'container' },
      chunk: chunkId,
      within: [],
    };
    if (this.#store.chunk(file, chunkId)?.kind === 'header')
      return filled.has(chunkId) ? [] : [itself];
    if (this.node(file, itself)?.kind !== 'map') return [itself];
    const walk = (id: EntryId, within: Path): void => {
      const node = this.node(file, { chunk: chunkId, within });
      if (node?.kind !== 'map') return;
      const seen = new Set<string>();
      for (const pair of node.pairs) {
        // The first of equal keys is read; the text says that there are others.
        if (seen.has(pair.key.text)) continue;
        seen.add(pair.key.text);
        const inner = inside(id, pair.key.text);
        const path = [...within, pair.key.text];
        const kind = entryKindOf(inner);
        if (kind.kind === 'container') walk(inner, path);
        else refs.push({ id: inner, kind, chunk: chunkId, within: path });
      }
    };
    walk(chunkId, []);
    return refs;
  }

  /** Below a section that isn't of the language, whose own key has the finding. */
  #isBelowUnknown(file: FileId, id: EntryId): boolean {
    const section = above(id);
    return (
      section !== null &&
      this.#store.chunk(file, section)?.kind === 'header' &&
      entryKindOf(section).kind === 'unknown'
    );
  }

  /** Whether a name is given below a section that isn't of the language, most likely misspelt. */
  isNamedUnread(file: FileId, name: string): boolean {
    return this.#unread(file).includes(name);
  }

  /** All names below such sections: asked about by every shot, so gathered once a file. */
  #unreadNames(file: FileId): readonly string[] {
    const unknown = this.#store.ids(file).filter((id) => entryKindOf(id).kind === 'unknown');
    return unknown.flatMap((id) => [
      keyOfEntry(plainId(id)),
      ...keysWithin(this.node(file, { chunk: id, within: [] })),
    ]);
  }

  #sourceOf(file: FileId, id: EntryId): EntrySource | undefined {
    // A key with nothing behind it still is an entry, and a header is a source of itself.
    if (this.#store.chunk(file, id)) return { chunk: id, within: HERE };
    for (let chunk = above(id); chunk; chunk = above(chunk)) {
      // Below a header its entries are chunks of their own.
      if (this.#store.chunk(file, chunk)?.kind !== 'entry') continue;
      const source = { chunk, within: keysOf(id).slice(keysOf(chunk).length) };
      // Below a whole section it has to be there.
      return this.node(file, source) === null ? undefined : source;
    }
    return undefined;
  }

  #lower(file: FileId, id: EntryId): Lowered | undefined {
    const kind = entryKindOf(id);
    const source = this.source(file, id);
    if (!source) return undefined;
    const { tree, problems } = this.parsed(file, source.chunk);
    // Nothing of the chunk could be read: its own problems say so.
    if (tree === null) return { kind, def: null, value: undefined, problems: [] };
    const node = this.node(file, source);
    const unread = problems.filter(isUnread).map(({ at }) => at);
    const from = { file, entry: id, unread };
    switch (kind.kind) {
      case 'entry': {
        const { def } = kind.home;
        const { fields, problems } = lowerEntry(def, node, from);
        return { kind, def, value: fields, problems };
      }
      case 'clips': {
        const { field, problems } = lowerClips(node, from);
        return { kind, def: 'clip', value: field, problems };
      }
      case 'key': {
        const { field, problems } = lowerKey(kind.def, kind.key as never, node, from);
        return { kind, def: null, value: field, problems };
      }
      case 'unknown': {
        const at = { file, entry: id, path: [] };
        const { problem } = unknownKey(
          kind.def,
          kind.key,
          at,
          new Set(this.#taken(keyOf(file, kind.def))),
        );
        return { kind, def: null, value: undefined, problems: [problem] };
      }
      case 'container':
        return { kind, def: null, value: undefined, problems: containerProblems(id, node, from) };
    }
  }

  /** The language's keys of the plan (or of the kit, the edit) that stand in the file already. */
  #takenIn(file: FileId, def: DefName): readonly string[] {
    const depth = def === 'plan' ? 0 : 1;
    const ids = this.#store.ids(file);
    const own = def === 'plan' ? ids : ids.filter((id) => isInside(entryAt(def), id));
    const there = new Set(own.map((id) => keysOf(id)[depth] ?? ''));
    return Object.keys(SHAPES[def].keys).filter((key) => there.has(key));
  }
}

/** A key with something below it. */
function holders(ids: readonly EntryId[]): ReadonlySet<EntryId> {
  const found = new Set<EntryId>();
  for (const id of ids)
    for (let outer = above(id); outer !== null; outer = above(outer)) found.add(outer);
  return found;
}

/** Names are one level below their section, or two below the kit. */
const keysWithin = (node: Node | null, levels = 2): readonly string[] =>
  node?.kind === 'map' && levels > 0
    ? node.pairs.flatMap(({ key, value }) => [key.text, ...keysWithin(value, levels - 1)])
    : [];

/** A section that is no mapping: a list, a single value, or nothing at all. */
function containerProblems(
  id: EntryId,
  node: Node | null,
  from: { file: FileId; entry: EntryId },
): readonly ShapeProblem[] {
  if (node?.kind === 'map') return [];
  const [section = '', group] = keysOf(id);
  const owner: DefName = group === undefined ? 'plan' : (section as DefName);
  const key = group ?? section;
  const keyShape = SHAPES[owner].keys[key];
  if (!keyShape) return [];
  const label = labelOf(key, keyShape);
  const at = { ...from, path: [] };
  if (node === null) return [emptyValue(at, label, keyShape.shape)];
  return [
    wrongForm(at, label, keyShape.shape, node.kind === 'seq' ? message`a list` : message`a value`),
  ];
}
