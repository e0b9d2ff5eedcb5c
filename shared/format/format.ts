/**
 * Lays a plan's text out as plans are written here: two blanks a level, one blank behind a colon and
 * a comma, blanks within braces, none at a line's end, one break at the text's end. What is read is
 * never another: a layout that reads otherwise is not offered.
 */
import type { Chunk } from '../text/chunk.ts';
import { ChunkedText, type TextRange } from '../text/chunked-text.ts';
import { split } from '../text/split.ts';
import type { FormatOptions } from './rows.ts';
import { readsTheSame } from './same.ts';
import { type TextRow, textRows } from './text-rows.ts';

interface FormatEdit {
  readonly range: TextRange;
  readonly text: string;
}

/** Whole lines, from 0; both belong to it. */
export interface FormatLines {
  readonly first: number;
  readonly last: number;
}

interface Layout {
  readonly rows: readonly TextRow[];
  /** How many of them stay; those behind are blank. */
  readonly kept: number;
}

/**
 * The edits, each within a line but the one at the text's end, in the order of the text.
 * @param within only these lines change
 */
export function formatEdits(
  chunks: readonly Chunk[],
  options: FormatOptions = {},
  within?: FormatLines,
): readonly FormatEdit[] {
  const layout = layoutOf(chunks, options, within);
  return layout ? editsOf(layout, hasMark(chunks)) : [];
}

/** The same as a text; the given one where nothing changes. */
export function formatted(text: string, options: FormatOptions = {}): string {
  const { chunks } = ChunkedText.from(text);
  const layout = layoutOf(chunks, options);
  return layout ? textOf(layout, hasMark(chunks)) : text;
}

const hasMark = (chunks: readonly Chunk[]): boolean => chunks[0]?.text[0] === '\ufeff';

/** The best layout that reads as the text does; null: the text is laid out so, or nothing does. */
function layoutOf(
  chunks: readonly Chunk[],
  options: FormatOptions,
  within?: FormatLines,
): Layout | null {
  const isMarked = hasMark(chunks);
  const text = chunks.map((chunk) => chunk.text).join('');
  for (const way of [
    () => laidOut(chunks, options, true, within),
    () => laidOut(chunks, options, false, within),
    () => withColumns(laidOut(chunks, options, false, within)),
  ]) {
    const layout = way();
    const made = textOf(layout, isMarked);
    if (made === text) return null;
    if (readsTheSame(chunks, split(made))) return layout;
  }
  return null;
}

function laidOut(
  chunks: readonly Chunk[],
  options: FormatOptions,
  moves: boolean,
  within?: FormatLines,
): Layout {
  const { rows, isEndFree } = textRows(chunks, options, moves);
  const { first, last } = within ?? { first: 0, last: rows.length };
  rows.forEach((row, index) => {
    if (index < first || index > last) row.after = row.before;
  });
  const end = rows.findLastIndex(({ kind }) => kind !== 'blank') + 1;
  const isWhole = isEndFree && last >= rows.length - 1;
  return { rows, kept: isWhole ? Math.max(end, first) : rows.length };
}

/** The same with every line left in its column. */
const withColumns = ({ rows, kept }: Layout): Layout => ({
  kept,
  rows: rows.map((row) => {
    const lead = /^ */.exec(row.before)?.[0] ?? '';
    return { ...row, after: row.after === '' ? '' : lead + row.after.trimStart() };
  }),
});

/** The break at the end: as the text has them. */
const breakOf = (rows: readonly TextRow[]): string =>
  rows.find(({ end }) => end !== '')?.end ?? '\n';

function textOf({ rows, kept }: Layout, isMarked: boolean): string {
  const written = rows
    .slice(0, kept)
    .map((row, index) => row.after + (needsBreak(row, index, rows) ? breakOf(rows) : row.end));
  return (isMarked ? '\ufeff' : '') + written.join('');
}

/** Whether a row is the last of its text and lacks its break. */
const needsBreak = ({ end, after }: TextRow, index: number, rows: readonly TextRow[]): boolean =>
  end === '' && after !== '' && index === rows.length - 1;

function editsOf({ rows, kept }: Layout, isMarked: boolean): FormatEdit[] {
  const edits: FormatEdit[] = [];
  for (let line = 0; line < kept; line++) {
    const row = rows[line] as TextRow;
    const lead = line === 0 && isMarked ? 1 : 0;
    const edit = changeOf(row.before, row.after);
    if (edit)
      edits.push({
        range: {
          start: { line, character: lead + edit.from },
          end: { line, character: lead + edit.to },
        },
        text: edit.text,
      });
  }
  return [...edits, ...endOf({ rows, kept }, isMarked)];
}

/** What a line's change comes to: the part between what both begin and end with. */
function changeOf(before: string, after: string) {
  if (before === after) return null;
  let from = 0;
  while (from < before.length && before[from] === after[from]) from++;
  let same = 0;
  const most = Math.min(before.length, after.length) - from;
  while (same < most && before.at(-1 - same) === after.at(-1 - same)) same++;
  return { from, to: before.length - same, text: after.slice(from, after.length - same) };
}

/** Removes blank lines behind the last one, or adds its break. */
function endOf({ rows, kept }: Layout, isMarked: boolean): FormatEdit[] {
  const at = (line: number) => ({
    line,
    character: (rows[line]?.before.length ?? 0) + (line === 0 && isMarked ? 1 : 0),
  });
  const last = rows.at(-1);
  if (!last) return [];
  const end = last.end === '' ? at(rows.length - 1) : { line: rows.length, character: 0 };
  if (kept < rows.length) {
    const start = { line: kept, character: kept === 0 && isMarked ? 1 : 0 };
    return [{ range: { start, end }, text: '' }];
  }
  return needsBreak(last, kept - 1, rows)
    ? [{ range: { start: end, end }, text: breakOf(rows) }]
    : [];
}
