/** How a chunk is laid out, and YAML text made to fit in. */

import { LineReader } from '../syntax/lines.ts';
import { quote } from '../syntax/quotes.ts';
import type { MapNode, Node, Pair } from '../syntax/tree.ts';
import type { Chunk } from './chunk.ts';
import { parseChunk } from './parse.ts';
import { columnOf } from './path.ts';
import { split } from './split.ts';

/** Spaces by which a level is indented where the file shows no other way. */
const USUAL_STEP = 2;

/** The line end that a chunk uses; LF where it shows none. */
export const lineEndOf = (chunk: Chunk | undefined): string =>
  /\r\n|\n|\r/.exec(chunk?.text ?? '')?.[0] ?? '\n';

/** Spaces from a mapping's keys to those below one of them, as the chunk has it. */
export function stepOf(chunk: Chunk | undefined): number {
  const map = chunk && parseChunk(chunk).tree;
  const step = map && firstStep(map, chunk.text);
  return step ?? USUAL_STEP;
}

function firstStep(map: MapNode, text: string): number | null {
  for (const { key, value } of map.pairs) {
    if (value?.kind !== 'map' || value.flow) continue;
    const step = columnOf(text, value.span.start) - columnOf(text, key.span.start);
    return step > 0 ? step : firstStep(value, text);
  }
  return null;
}

/** Where the line that holds `at` ends, before its break. */
export function lineEnd(text: string, at: number): number {
  const found = text.slice(at).search(/[\r\n]/);
  return found < 0 ? text.length : at + found;
}

/** Where the line behind the one that holds `at` starts; the text's end where there is none. */
export const nextLine = (text: string, at: number): number => {
  const end = lineEnd(text, at);
  return new LineReader(text.slice(end, end + 2)).at(0).next + end;
};

/** `text` (block YAML, no indentation of its own) with each line moved in by `column`. */
export const indented = (text: string, column: number, eol: string): string =>
  text
    .replace(/[\r\n]+$/, '')
    .split(/\r\n|\n|\r/)
    .map((line) => (line === '' ? line : ' '.repeat(column) + line))
    .join(eol);

/** Block YAML below the key that starts at `key`, with the break before it. */
export function blockBelow(chunk: Chunk, key: number, text: string): string {
  const eol = lineEndOf(chunk);
  return eol + indented(text, columnOf(chunk.text, key) + stepOf(chunk), eol);
}

/** `name:` with `text` behind it, or below it where it has lines or keys; in column `column`. */
export function keyed(
  name: string,
  text: string,
  column: number,
  step: number,
  eol: string,
): string {
  const key = ' '.repeat(column) + name;
  if (text === '') return `${key}:`;
  return isBlock(text)
    ? `${key}:${eol}${indented(text, column + step, eol)}`
    : `${key}: ${text.trim()}`;
}

/** The value of `text`, which is YAML of its own. */
const readValue = (text: string): { node: Node | null; text: string } => {
  const made = `k:\n${indented(text, 1, '\n')}\n`;
  const [chunk] = split(made, new Map());
  const pair = chunk && parseChunk(chunk).tree?.pairs[0];
  return { node: pair?.value ?? null, text: made };
};

/** Whether it can't stand behind a key: lines, or a mapping or list in block style. */
const isBlock = (text: string): boolean => {
  if (/[\r\n]/.test(text.trim())) return true;
  const { node } = readValue(text);
  return node !== null && node.kind !== 'scalar' && !node.flow;
};

/** `text` on one line: as it is, or in flow style where it is a block. */
export function inlineText(text: string): string {
  if (!isBlock(text)) return text.trim();
  const { node, text: made } = readValue(text);
  return node ? flowText(node, made) : text.trim();
}

function flowText(node: Node | null, text: string): string {
  if (node === null) return "''";
  if (node.kind === 'map') {
    return node.pairs.length === 0
      ? '{}'
      : `{ ${node.pairs.map((pair) => flowPair(pair, text)).join(', ')} }`;
  }
  if (node.kind === 'seq') return `[${node.items.map((item) => flowText(item, text)).join(', ')}]`;
  const written = text.slice(node.span.start, node.span.end);
  const fits = node.style === 'plain' && !/[,[\]{}\r\n]/.test(written);
  const isQuoted = node.style === 'single' || node.style === 'double';
  return fits || (isQuoted && !/[\r\n]/.test(written)) ? written : quote(node.text);
}

const flowPair = ({ key, value }: Pair, text: string): string =>
  value ? `${flowText(key, text)}: ${flowText(value, text)}` : `${flowText(key, text)}:`;
