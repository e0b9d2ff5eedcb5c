/** Where the names of a file stand, found by the shape of the language in each chunk's tree. */
import type { NameToken } from '../api/name-tokens.ts';
import { ENTRIES } from '../plan/generated/entries.ts';
import type { DefName, Group } from '../plan/generated/names.ts';
import { SHAPES } from '../plan/generated/shapes.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Shape } from '../plan/shape.ts';
import type { Chunk } from '../text/chunk.ts';
import type { Node, ScalarNode, Span } from '../text/tree.ts';
import type { Context } from '../workspace/context.ts';
import { entryKindOf } from '../workspace/entry-kinds.ts';
import { meaningOf } from './meaning.ts';
import { find } from './navigation/named.ts';

/** A name in its chunk. */
interface Named {
  /** From the chunk's first line. */
  readonly line: number;
  readonly character: number;
  readonly length: number;
  readonly name: string;
  /** What is defined; or the groups that it may be found in. */
  readonly of: DefName | readonly Group[];
}

/** The same while it is looked for. */
type Found = Pick<Named, 'name' | 'of'> & { readonly span: Span };

const known = new WeakMap<Chunk, { readonly id: EntryId; readonly names: readonly Named[] }>();

const DEFINED: ReadonlySet<DefName> = new Set(Object.values(ENTRIES).map(({ def }) => def));

/** In the order of the text; `lines`: only what touches them, from 0, both counted. */
export function nameTokens(
  context: Context,
  file: FileId,
  lines?: { readonly first: number; readonly last: number },
): readonly NameToken[] {
  const text = context.store.text(file);
  if (!text) return [];
  const ids = context.store.chunkIds(file);
  const from = lines ? text.locate({ line: lines.first, character: 0 }).index : 0;
  const to = lines ? text.locate({ line: lines.last + 1, character: 0 }).index : ids.length - 1;
  const found: NameToken[] = [];
  const kinds = new Map<string, DefName | null>();
  for (let index = from; index <= to; index++) {
    const id = ids[index];
    if (id === undefined) continue;
    const firstLine = text.positionOf(index, 0).line;
    for (const { name, of, length, character, line: below } of namesOf(context, file, id, index)) {
      const line = firstLine + below;
      if (lines && (line < lines.first || line > lines.last)) continue;
      const isDefinition = typeof of === 'string';
      const kind = isDefinition ? of : kindOf(context, file, id, of, name, kinds);
      found.push({ line, character, length, kind, isDefinition });
    }
  }
  return found;
}

/** The kind of what a name refers to; each is looked up once. */
function kindOf(
  context: Context,
  file: FileId,
  entry: EntryId,
  groups: readonly Group[],
  name: string,
  seen: Map<string, DefName | null>,
): DefName | null {
  // Which body a setting is of takes the whole shot to know; what it is doesn't.
  const [first] = groups;
  if (first === 'recordings') return ENTRIES[first].def;
  const key = `${groups.join()} ${name}`;
  let kind = seen.get(key);
  if (kind === undefined) {
    const thing = find(context, file, entry, groups, name);
    const group = thing?.groups[0];
    kind = group === undefined ? null : ENTRIES[group].def;
    seen.set(key, kind);
  }
  return kind;
}

function namesOf(
  { analysis, store }: Context,
  file: FileId,
  id: EntryId,
  index: number,
): readonly Named[] {
  const text = store.text(file);
  const chunk = text?.chunks[index];
  if (!text || !chunk) return [];
  const before = known.get(chunk);
  if (before?.id === id) return before.names;
  const found: Found[] = [];
  const pair = analysis.entries.parsed(file, id).tree?.pairs[0];
  const kind = entryKindOf(id);
  const meaning = meaningOf(kind, { file, entry: id, path: [] });
  if (pair && kind.kind === 'entry') add(pair.key, kind.home.def, found);
  if (pair && kind.kind === 'clips') add(pair.key, ['shots'], found);
  if (pair?.value && meaning) walk(pair.value, meaning.shape, found);
  const first = text.positionOf(index, 0).line;
  // What was recovered from broken text may be met in another order.
  found.sort((a, b) => a.span.start - b.span.start);
  const names = found.map(({ span, name, of }): Named => {
    const { line, character } = text.positionOf(index, span.start);
    return { line: line - first, character, length: span.end - span.start, name, of };
  });
  known.set(chunk, { id, names });
  return names;
}

function walk(node: Node, shape: Shape, names: Found[]): void {
  switch (shape.kind) {
    case 'ref':
      if (node.kind === 'scalar') add(node, shape.groups, names);
      return;
    case 'record':
    case 'word-or-record': {
      if (node.kind !== 'map') return;
      const { keys } = SHAPES[shape.of];
      for (const { key, value } of node.pairs)
        if (value && Object.hasOwn(keys, key.text)) walk(value, keys[key.text]!.shape, names);
      return;
    }
    case 'list':
      if (node.kind !== 'seq') walk(node, shape.item, names);
      else for (const item of node.items) if (item) walk(item, shape.item, names);
      return;
    case 'map':
      if (node.kind !== 'map') return;
      for (const { key, value } of node.pairs) {
        const of = shape.names ?? (shape.item.kind === 'record' ? shape.item.of : null);
        if (typeof of === 'string' ? DEFINED.has(of) : of) add(key, of!, names);
        if (value) walk(value, shape.item, names);
      }
  }
}

/** A name that runs over several lines is none. */
function add({ span, text, style }: ScalarNode, of: Named['of'], names: Found[]): void {
  const isOneLine = style !== 'literal' && style !== 'folded' && !text.includes('\n');
  if (isOneLine && span.end > span.start && span.end - span.start <= text.length + 2)
    names.push({ span, name: text, of });
}
