/**
 * How much of a text is read. Beyond a budget one problem says what was not read; nothing that a
 * file can hold makes reading slow or deep. Plans written by hand stay far below.
 */

import { contentLines } from './lines.ts';

/** Nested mappings, lists and brackets below an entry's key. A shot nests four deep. */
export const MAX_DEPTH = 32;

/** UTF-16 units of one entry. A shot with every key set has about 1,500. */
export const MAX_ENTRY_LENGTH = 262_144;

/** Problems told of one entry; one more says that there are others. */
export const MAX_PROBLEMS = 20;

/**
 * Brackets, quotes and other marks of YAML that one text given to `yaml` may hold: its time grows
 * with their square (measured: 200,000 take two minutes, 4,000 under 50 ms). Longer entries are
 * given to it field by field.
 */
export const MAX_MARKS = 4000;

/** Marks that `yaml` is given of one entry in all, where it is read field by field. */
export const MAX_REREAD_MARKS = 10 * MAX_MARKS;

/** Counts them. */
export function countMarks(text: string): number {
  let count = 0;
  for (let at = 0; at < text.length; at++) if (marks[text.charCodeAt(at)] === 1) count++;
  return count;
}

const marks = new Uint8Array(128);
for (const mark of '[]{},:"\'&*!|>#\\-?%@`\n') marks[mark.charCodeAt(0)] = 1;

/**
 * Offset at which a text first nests too deep; -1 where it never does. Counted before any recursive
 * reader sees it: brackets in quotes and comments count too, so that one pass without states suffices.
 */
export function tooDeepAt(text: string): number {
  const columns: number[] = [];
  let open = 0;
  for (const { start, end, at: first, indent } of contentLines(text, 0, text.length)) {
    let at = first;
    while (columns.length > 0 && (columns.at(-1) as number) >= indent) columns.pop();
    columns.push(indent);
    // `- - - x` and `? ? x` nest on one line.
    while ('-?'.includes(text[at] as string) && text[at + 1] === ' ') {
      at += 2;
      while (at < end && text.charCodeAt(at) === 0x20) at++;
      columns.push(at - start);
      if (columns.length > MAX_DEPTH) return at;
    }
    for (; at < end; at++) {
      const code = text.charCodeAt(at);
      if (code === 0x5b || code === 0x7b) open++;
      else if ((code === 0x5d || code === 0x7d) && open > 0) open--;
      if (open + columns.length > MAX_DEPTH) return at;
    }
  }
  return -1;
}
