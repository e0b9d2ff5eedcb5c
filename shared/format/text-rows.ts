/** All rows of a text, chunk by chunk. What can't be read stays as it is. */
import { shiftNode } from '../syntax/nodes.ts';
import type { Chunk } from '../text/chunk.ts';
import { parseChunk } from '../text/parse.ts';
import { type FormatOptions, type Row, rowsOf, STEP } from './rows.ts';
import { tokensOf } from './tokens.ts';

export interface TextRow extends Row {
  /** The break behind it; '' behind the last. */
  readonly end: string;
}

interface TextRows {
  readonly rows: TextRow[];
  /** Whether blank lines at the text's end say nothing. */
  readonly isEndFree: boolean;
}

/** What leaves in doubt how a chunk's lines belong together. */
const IN_DOUBT: ReadonlySet<string> = new Set(['syntax', 'outside-the-profile', 'too-much']);

const isInDoubt = (chunk: Chunk): boolean =>
  parseChunk(chunk).problems.some(({ rule }) => IN_DOUBT.has(rule));

/** `moves`: entries may move to another column; those of a section move together or not at all. */
export function textRows(
  chunks: readonly Chunk[],
  options: FormatOptions,
  moves: boolean,
): TextRows {
  const still = moves ? sectionsInDoubt(chunks) : null;
  const rows: TextRow[] = [];
  let isEndFree = false;
  chunks.forEach((chunk, index) => {
    const section = chunk.path[0];
    const isMoved = still !== null && section !== undefined && !still.has(section);
    const base = isMoved ? STEP * (chunk.path.length - 1) : chunk.indent;
    const { lines, ends } = linesOf(index === 0 ? withoutMark(chunk.text) : chunk.text);
    const made = isInDoubt(chunk) ? null : rowsOfChunk(chunk, lines, ends, base, options);
    const found = made?.rows ?? lines.map(asItIs);
    found.forEach((row, at) => {
      rows.push({ ...row, end: ends[at] as string });
    });
    isEndFree = made !== null && !made.keepsEnd;
  });
  placeComments(rows, options.align === 'keep');
  return { rows, isEndFree };
}

/** Sections of which a part can't be read: where that belongs follows from the columns around it. */
function sectionsInDoubt(chunks: readonly Chunk[]): ReadonlySet<string> {
  const found = new Set<string>();
  let section: string | undefined;
  let isOpen = false;
  for (const chunk of chunks) {
    section = chunk.path[0] ?? section;
    // What belongs nowhere may belong to the next section as well.
    if (isOpen && chunk.path.length > 0 && section !== undefined) {
      found.add(section);
      isOpen = false;
    }
    if (!isInDoubt(chunk)) continue;
    if (section !== undefined) found.add(section);
    isOpen = chunk.path.length === 0;
  }
  return found;
}

function rowsOfChunk(
  chunk: Chunk,
  lines: readonly string[],
  ends: readonly string[],
  base: number,
  options: FormatOptions,
): { rows: Row[]; keepsEnd: boolean } | null {
  const { tree } = parseChunk(chunk);
  if (!tree && chunk.kind !== 'loose') return null;
  const text = withoutMark(chunk.text);
  const tokens = tokensOf(text, tree && shiftNode(tree, text.length - chunk.text.length));
  if (!tokens) return null;
  const starts: number[] = [];
  let at = 0;
  lines.forEach((line, index) => {
    starts.push(at);
    at += line.length + (ends[index] as string).length;
  });
  const rows = rowsOf(lines, starts, tokens, base, options);
  const last = tokens.at(-1);
  return rows && { rows, keepsEnd: last?.isProse === true && /^.[0-9]*\+/.test(last.text) };
}

const asItIs = (line: string): Row => {
  const was = /^ */.exec(line)?.[0].length ?? 0;
  const kind = was === line.length ? 'blank' : 'content';
  return { before: line, after: line, kind, was, column: was };
};

const withoutMark = (text: string): string => (text[0] === '\ufeff' ? text.slice(1) : text);

function linesOf(text: string): { lines: string[]; ends: string[] } {
  const lines: string[] = [];
  const ends: string[] = [];
  let from = 0;
  for (const found of text.matchAll(/\r\n|\n|\r/g)) {
    lines.push(text.slice(from, found.index));
    ends.push(found[0]);
    from = found.index + found[0].length;
  }
  if (from < text.length) {
    lines.push(text.slice(from));
    ends.push('');
  }
  return { lines, ends };
}

/** Comments on lines of their own go with the line that they stood level with, else with the nearer one. */
function placeComments(rows: readonly TextRow[], isKept: boolean): void {
  const next: (Row | undefined)[] = [];
  let known: Row | undefined;
  for (let index = rows.length - 1; index >= 0; index--) {
    next[index] = known;
    if (rows[index]?.kind === 'content') known = rows[index];
  }
  let before: Row | undefined;
  rows.forEach((row, index) => {
    if (row.kind === 'content') before = row;
    if (row.kind !== 'comment') return;
    row.column = columnOf(row.was, before, next[index], isKept);
    row.after = ' '.repeat(row.column) + row.after;
  });
}

function columnOf(
  was: number,
  before: Row | undefined,
  next: Row | undefined,
  isKept: boolean,
): number {
  if (next?.was === was) return next.column;
  if (before?.was === was) return before.column;
  if (isKept || !(next ?? before)) return was;
  const isNext = next && (!before || Math.abs(was - next.was) <= Math.abs(was - before.was));
  return (isNext ? next : (before as Row)).column;
}
