/** Adds an entry to a section, and the section where there is none. */

import type { Path } from '../syntax/tree.ts';
import type { Chunk } from './chunk.ts';
import type { ChunkedText } from './chunked-text.ts';
import type { TextEdit } from './edit-home.ts';
import { insertPair } from './insert.ts';
import { planLayout } from './layout.ts';
import { keyed, lineEndOf, nextLine, stepOf } from './layout-text.ts';
import { parseChunk } from './parse.ts';
import { isBelow, samePath } from './path.ts';

export function addEntry(
  text: ChunkedText,
  section: readonly string[],
  name: string,
  body: string,
): readonly TextEdit[] {
  return place(text, section, name, body);
}

/** Writes the pair at `full`, of which no chunk holds a part yet. */
export function createPath(text: ChunkedText, full: Path, body: string): readonly TextEdit[] {
  if (full.some((key) => typeof key !== 'string')) return [];
  const keys = full as readonly string[];
  const [first, ...rest] = keys;
  if (first === undefined) return [];
  const header = deepestHeader(text, keys);
  if (header) {
    const [name, ...deeper] = keys.slice(header.length);
    return name === undefined
      ? []
      : place(text, keys.slice(0, header.length), name, wrapped(deeper, body));
  }
  return rest.length > 0 && planLayout.has(first)
    ? place(text, [first], rest[0] as string, wrapped(rest.slice(1), body))
    : addField(text, first, wrapped(rest, body));
}

const wrapped = (keys: readonly string[], body: string): string =>
  keys.reduceRight((inner, key) => keyed(key, inner, 0, 2, '\n'), body);

function deepestHeader(text: ChunkedText, keys: readonly string[]): readonly string[] | null {
  let found: readonly string[] | null = null;
  for (const { kind, path } of text.chunks) {
    if (kind !== 'header' || path.length >= keys.length) continue;
    if (isBelow(keys, path) && path.length > (found?.length ?? 0)) found = path;
  }
  return found;
}

function place(
  text: ChunkedText,
  section: readonly string[],
  name: string,
  body: string,
): readonly TextEdit[] {
  const { chunks } = text;
  const index = chunks.findIndex(
    (chunk) => chunk.kind !== 'loose' && samePath(chunk.path, section),
  );
  const owner = chunks[index];
  if (!owner)
    return section.length > 1
      ? intoMissingGroup(text, section, name, body)
      : addField(text, section[0] as string, keyed(name, body, 0, 2, '\n'));
  if (owner.kind === 'entry') {
    const { tree } = parseChunk(owner);
    const home = tree && { index, chunk: owner, tree, path: [section.at(-1) as string, name] };
    return home ? insertPair(home, body) : [];
  }
  const own = chunks.flatMap((chunk, at) =>
    chunk.path.length > section.length && isBelow(chunk.path, section) ? [at] : [],
  );
  const last = own.at(-1) ?? index;
  const first = chunks.find((chunk) => samePath(chunk.path.slice(0, -1), section));
  const step = stepOf(first);
  const column = first ? first.indent : owner.indent + step;
  return append(text, last, keyed(name, body, column, step, eolOf(text)), hasBlanks(chunks, own));
}

/** `kit/tubes` where there is a kit and no tubes in it, or neither. */
function intoMissingGroup(
  text: ChunkedText,
  section: readonly string[],
  name: string,
  body: string,
) {
  return place(text, section.slice(0, -1), section.at(-1) as string, keyed(name, body, 0, 2, '\n'));
}

/** A short field goes after the last of those at the top of the plan; one with lines goes to the end. */
function addField(text: ChunkedText, key: string, body: string): readonly TextEdit[] {
  const { chunks } = text;
  const eol = eolOf(text);
  const written = keyed(key, body, 0, 2, eol);
  const isSection = planLayout.has(key) || /[\r\n]/.test(body.trim());
  const firstSection = chunks.findIndex(
    (chunk) => chunk.kind === 'header' || planLayout.has(chunk.path[0] ?? ''),
  );
  const before = isSection || firstSection < 0 ? chunks.length : firstSection;
  const last = chunks.findLastIndex((chunk, at) => at < before && chunk.kind !== 'loose');
  if (last >= 0) return append(text, last, written, isSection);
  if (before < chunks.length)
    return [{ chunk: before, span: { start: 0, end: 0 }, text: written + eol }];
  return append(text, chunks.length - 1, written, false);
}

/** After the last line with content of chunk `at`, before its blank lines and comments. */
function append(
  text: ChunkedText,
  at: number,
  written: string,
  withBlank: boolean,
): readonly TextEdit[] {
  const chunk = text.chunks[at] as Chunk;
  const eol = eolOf(text);
  const { tree } = parseChunk(chunk);
  const end = tree ? nextLine(chunk.text, tree.span.end) : chunk.text.length;
  const isBroken = end > 0 && !/[\r\n]$/.test(chunk.text.slice(0, end));
  const before = (isBroken ? eol : '') + (withBlank && end > 0 ? eol : '');
  return [
    { chunk: at, span: { start: end, end }, text: `${before}${written}${isBroken ? '' : eol}` },
  ];
}

/** Whether a section's entries are kept apart by blank lines. */
function hasBlanks(chunks: readonly Chunk[], own: readonly number[]): boolean {
  const inner = own.slice(0, -1).map((at) => (chunks[at] as Chunk).text);
  return inner.length > 0 && inner.every((text) => /(\n|\r(?!\n))[ \t]*[\r\n]/.test(text));
}

const eolOf = (text: ChunkedText): string =>
  lineEndOf(text.chunks.find((chunk) => chunk.breaks > 0));
