/**
 * Marks of an unfinished merge inside an entry. Which of the two versions holds is not known, so of
 * what stands between the marks the keys are read, and no value; all else of the entry is read.
 */
import { keyAt } from './keys.ts';
import { indentAt, isBlank, type Line, LineReader } from './lines.ts';
import type { Problems } from './problems.ts';

const isMark = (text: string, at: number, end: number, mark: string): boolean =>
  text.startsWith(mark.repeat(7), at) && (at + 7 >= end || ' \t'.includes(text[at + 7] as string));

export const opensMerge = (text: string, { start, end }: Line): boolean =>
  isMark(text, start, end, '<');

export const closesMerge = (text: string, { start, end }: Line): boolean =>
  isMark(text, start, end, '>');

const dividesMerge = (text: string, { start, end }: Line): boolean =>
  isMark(text, start, end, '=') || isMark(text, start, end, '|');

/** The text, every offset kept, with blanks for what is in doubt. */
export function readMergeMarks(text: string, problems: Problems): string {
  if (!text.includes('<<<<<<<')) return text;
  const parts: string[] = [];
  let kept = 0;
  let open: Merge | null = null;
  const close = (merge: Merge, { start, end }: Line): void => {
    parts.push(text.slice(kept, merge.start), merge.read(start));
    kept = start;
    problems.syntax('unfinished-merge', { start: merge.start, end });
  };
  const lines = new LineReader(text);
  let line = lines.at(0);
  for (; ; line = lines.at(line.next)) {
    if (open === null && opensMerge(text, line)) open = new Merge(text, line);
    else if (open !== null && closesMerge(text, line)) {
      close(open, line);
      parts.push(' '.repeat(line.end - line.start));
      kept = line.end;
      open = null;
    } else if (open !== null && !dividesMerge(text, line)) open.add(line);
    if (line.next === line.end) break;
  }
  if (open !== null) {
    const start = text.length;
    close(open, { start, end: Math.max(open.start, text.trimEnd().length), next: start });
  }
  return parts.join('') + text.slice(kept);
}

/** What stands between the marks of one merge, both versions and what they come from. */
class Merge {
  readonly start: number;
  readonly #text: string;
  readonly #lines: Line[] = [];

  constructor(text: string, { start }: Line) {
    this.#text = text;
    this.start = start;
  }

  add(line: Line): void {
    const { start, end } = line;
    if (!isBlank(this.#text, start + indentAt(this.#text, start, end), end)) this.#lines.push(line);
  }

  /** From the mark up to `to`: of each key and item on the outermost lines its beginning, once. */
  read(to: number): string {
    const text = this.#text;
    const outermost = Math.min(...this.#lines.map(({ start, end }) => indentAt(text, start, end)));
    const seen = new Set<string>();
    const parts: string[] = [];
    let from = this.start;
    for (const { start, end } of this.#lines) {
      if (indentAt(text, start, end) !== outermost) continue;
      const at = start + outermost;
      const shape = keyAt(text, at, end);
      const isItem = text[at] === '-' && /[ \t]/.test(text[at + 1] ?? ' ');
      const key = shape?.key ?? (isItem ? '-' : undefined);
      if (key === undefined || seen.has(key)) continue;
      seen.add(key);
      const stop = shape ? shape.colon + 1 : at + 1;
      parts.push(blank(text, from, at), text.slice(at, stop));
      from = stop;
    }
    return parts.join('') + blank(text, from, to);
  }
}

const blank = (text: string, from: number, to: number): string =>
  text.slice(from, to).replace(/[^\r\n]/g, ' ');
