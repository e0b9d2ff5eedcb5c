/**
 * The outline of a file: sections, groups, entries, each with the values that tell it from the
 * others, as they are written. Nothing is worked out for it, so that it stays cheap in long plans.
 */

import type { OutlineSymbol } from '../api/facade.ts';
import type { Range } from '../api/located.ts';
import { inside as below } from '../plan/entry-id.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { inertLine } from '../report/inert.ts';
import type { Chunk } from '../text/chunk.ts';
import type { MapNode, Node, Pair } from '../text/tree.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { entryKindOf } from '../workspace/entry-kinds.ts';
import { detailOf } from './symbol-detail.ts';

/** A symbol whose children are still being gathered. */
interface Growing {
  readonly path: readonly string[];
  readonly symbol: OutlineSymbol & { range: Range };
  readonly children: OutlineSymbol[];
}

/** The symbol of an entry as it was made last, and the line that its chunk began on. */
interface Made {
  readonly id: EntryId;
  line: number;
  symbol: OutlineSymbol;
}

/** A chunk that an edit left as it was is not read again, only moved. */
const made = new WeakMap<Chunk, Made>();

export function symbolsOf(context: Context, file: FileId): readonly OutlineSymbol[] {
  const chunks = context.store.text(file)?.chunks ?? [];
  const ids = context.store.chunkIds(file);
  const top: OutlineSymbol[] = [];
  /** Headers that the next chunk may stand under, outermost first. */
  const open: Growing[] = [];
  chunks.forEach((chunk, index) => {
    if (chunk.kind === 'loose') return;
    while (open.length > 0 && !isUnder(chunk.path, open.at(-1)!.path)) close(open);
    const grown = symbolAt(context, file, ids[index]!, index, chunk);
    (open.at(-1)?.children ?? top).push(grown.symbol);
    if (chunk.kind === 'header') open.push({ ...grown, path: chunk.path });
  });
  while (open.length > 0) close(open);
  return top;
}

/** A section reaches to the end of the last thing in it, which is closed before it. */
function close(open: Growing[]): void {
  const { symbol, children } = open.pop()!;
  const last = children.at(-1);
  if (last) symbol.range = { ...symbol.range, end: last.range.end };
}

function symbolAt(
  context: Context,
  file: FileId,
  id: EntryId,
  index: number,
  chunk: Chunk,
): Omit<Growing, 'path'> {
  // What stands under a header is gathered anew.
  if (chunk.kind === 'header') return symbolOfChunk(context, file, id, index);
  const line = context.locator.firstLineAt(file, index);
  const before = made.get(chunk);
  if (before?.id !== id) {
    const { symbol } = symbolOfChunk(context, file, id, index);
    made.set(chunk, { id, line, symbol });
    return { symbol, children: [] };
  }
  if (before.line !== line) {
    before.symbol = movedBy(before.symbol, line - before.line);
    before.line = line;
  }
  return { symbol: before.symbol, children: [] };
}

/** Key by key: copies by `...` are several times as slow, and there may be thousands. */
function movedBy(symbol: OutlineSymbol, lines: number): OutlineSymbol {
  const { name, detail, kind, children } = symbol;
  return {
    name,
    detail,
    kind,
    range: moved(symbol.range, lines),
    selection: moved(symbol.selection, lines),
    children: children.length === 0 ? children : children.map((child) => movedBy(child, lines)),
  };
}

const moved = ({ start, end }: Range, lines: number): Range => ({
  start: { line: start.line + lines, character: start.character },
  end: { line: end.line + lines, character: end.character },
});

const isUnder = (path: readonly string[], above: readonly string[]): boolean =>
  path.length > above.length && above.every((step, index) => path[index] === step);

function symbolOfChunk(
  { store, analysis, locator }: Context,
  file: FileId,
  id: EntryId,
  index: number,
): Omit<Growing, 'path'> {
  const { path, text, indent } = store.text(file)!.chunks[index]!;
  const pair = analysis.entries.parsed(file, id).tree?.pairs[0];
  const rangeOf = (span: { start: number; end: number }) =>
    locator.rangeIn(file, { chunk: id, span });
  if (pair) {
    const children: OutlineSymbol[] = [];
    const symbol = { ...symbolOfPair(pair, id, rangeOf, path.at(-1)), children };
    if (entryKindOf(id).kind === 'container' && pair.value?.kind === 'map')
      children.push(...inside(pair.value, id, rangeOf));
    return { symbol, children };
  }
  const children: OutlineSymbol[] = [];
  const range = rangeOf({ start: indent, end: text.trimEnd().length });
  const selection = { start: range.start, end: range.start };
  const symbol = {
    name: nameOf(path.at(-1) ?? ''),
    detail: '',
    kind: kindOf(id),
    range,
    selection,
  };
  return { symbol: { ...symbol, children }, children };
}

type RangeOf = (span: { start: number; end: number }) => Range;

function symbolOfPair(pair: Pair, id: EntryId, rangeOf: RangeOf, name = pair.key.text) {
  return {
    name: nameOf(name),
    detail: detailOf(entryKindOf(id), pair.value),
    kind: kindOf(id),
    range: rangeOf(pair.span),
    selection: rangeOf(pair.key.span),
  };
}

/** Entries of a section that stands whole in one chunk. */
function inside(map: MapNode, id: EntryId, rangeOf: RangeOf): OutlineSymbol[] {
  return map.pairs.map((pair) => {
    const inner = below(id, pair.key.text);
    const value: Node | null = pair.value;
    const deeper = entryKindOf(inner).kind === 'container' && value?.kind === 'map';
    return {
      ...symbolOfPair(pair, inner, rangeOf),
      children: deeper ? inside(value, inner, rangeOf) : [],
    };
  });
}

function kindOf(id: EntryId): OutlineSymbol['kind'] {
  const { kind } = entryKindOf(id);
  if (kind === 'container') return 'section';
  return kind === 'entry' || kind === 'clips' ? 'entry' : 'field';
}

const nameOf = (text: string): string => inertLine(text) || message`(no name)`;
