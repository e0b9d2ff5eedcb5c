/**
 * Makes an edit said in places into the least edits of the text: comments, layout, line ends and
 * block or flow style stay as they are.
 */

import { colonOf } from '../syntax/nodes.ts';
import type { Pair, Path, Span } from '../syntax/tree.ts';
import { addEntry, createPath } from '../text/add-entry.ts';
import type { ChunkedText } from '../text/chunked-text.ts';
import { type Home, pairIn, type TextEdit } from '../text/edit-home.ts';
import { insertItem, insertPair } from '../text/insert.ts';
import { blockBelow, inlineText } from '../text/layout-text.ts';
import { parseChunk } from '../text/parse.ts';
import { isBelow, nodeAt } from '../text/path.ts';
import { removeAt } from '../text/remove.ts';
import { keysOf } from './entry-id.ts';
import type { PlanEdit } from './problem.ts';

/** The edits, in the order of the text; none where the place can't be edited as asked. */
export function toTextEdits(edit: PlanEdit, text: ChunkedText): readonly TextEdit[] {
  if (edit.op === 'add-entry') return addEntry(text, keysOf(edit.section), edit.name, edit.text);
  const { entry, path } = edit.at;
  const full: Path = [...keysOf(entry), ...path];
  const home = homeOf(text, full);
  if (!home) return edit.op === 'set' ? createPath(text, full, edit.text) : [];
  switch (edit.op) {
    case 'set':
      return setAt(home, edit.text);
    case 'remove':
      return home.chunk.kind === 'header'
        ? removeSection(text, full)
        : removeAt(home, home.path.length - Math.max(0, path.length - 1));
    case 'rename-key':
      return renameKey(home, edit.text);
  }
}

/** A section whose entries stand in chunks of their own: its header and all of them. */
const removeSection = (text: ChunkedText, section: Path): readonly TextEdit[] =>
  text.chunks.flatMap((chunk, index) =>
    chunk.kind !== 'loose' && isBelow(chunk.path, section)
      ? [{ chunk: index, span: { start: 0, end: chunk.text.length }, text: '' }]
      : [],
  );

/** The chunk that holds `full`, or would: the one with the longest path that leads there. */
function homeOf(text: ChunkedText, full: Path): Home | null {
  let found: Home | null = null;
  text.chunks.forEach((chunk, index) => {
    const { length } = chunk.path;
    if (
      chunk.kind === 'loose' ||
      length > full.length ||
      (found && length <= found.chunk.path.length)
    )
      return;
    if (!isBelow(full, chunk.path)) return;
    // What stands below a header stands in chunks of its own.
    if (chunk.kind === 'header' && length < full.length) return;
    const { tree } = parseChunk(chunk);
    if (tree) found = { index, chunk, tree, path: full.slice(length - 1) };
  });
  return found;
}

function renameKey({ index, tree, path }: Home, text: string): readonly TextEdit[] {
  const parent = nodeAt(tree, path.slice(0, -1));
  const pair = pairIn(parent, path.at(-1));
  return pair ? [{ chunk: index, span: pair.key.span, text }] : [];
}

function setAt(home: Home, text: string): readonly TextEdit[] {
  const { tree, path } = home;
  const last = path.at(-1) as string | number;
  const parent = nodeAt(tree, path.slice(0, -1));
  if (parent?.kind === 'seq') {
    const item = typeof last === 'number' ? parent.items[last] : undefined;
    return item ? replaceValue(home, item.span, text) : insertItem(home, parent, text);
  }
  const pair = pairIn(parent, last);
  if (pair) return setValue(home, pair, parent?.kind === 'map' && parent.flow, text);
  return insertPair(home, text);
}

function replaceValue({ index, chunk }: Home, span: Span, text: string): readonly TextEdit[] {
  if (chunk.text.slice(span.start, span.end) === text) return [];
  return [{ chunk: index, span, text: inlineText(text) }];
}

function setValue(home: Home, pair: Pair, inFlow: boolean, text: string): readonly TextEdit[] {
  const { index, chunk } = home;
  const { key, value } = pair;
  const colon = colonOf(chunk.text, pair);
  const start = colon < 0 ? key.span.end : colon + 1;
  const isBlock = text.includes('\n') && !inFlow;
  if (isBlock) {
    const end = value ? value.span.end : start;
    const below = blockBelow(chunk, key.span.start, text);
    return [
      {
        chunk: index,
        span: { start, end },
        text: colon < 0 ? `:${below}` : below,
      },
    ];
  }
  const written = inlineText(text);
  if (value === null) {
    const text = colon < 0 ? `: ${written}` : ` ${written}`;
    return [{ chunk: index, span: { start, end: start }, text }];
  }
  const onKeysLine = !/[\r\n]/.test(chunk.text.slice(key.span.end, value.span.start));
  if (onKeysLine) return replaceValue(home, value.span, text);
  return [{ chunk: index, span: { start, end: value.span.end }, text: ` ${written}` }];
}
