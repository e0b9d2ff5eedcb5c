/** The line of a finding with its value marked below it, cut to what a terminal is wide. */
import { inertLine } from './inert.ts';

/** Longest piece of a line shown around the value. */
const SHOWN = 100;

interface MarkedLine {
  readonly text: string;
  /** As many blanks and carets as bring the carets under the value. */
  readonly mark: string;
}

/** The part of `line` around [start, end) and a row of carets below it; null for a blank line. */
export function markedLine(line: string, start: number, end: number): MarkedLine | null {
  if (line.trim() === '') return null;
  const indent = Math.min(line.length - line.trimStart().length, start);
  const from = whole(line, start - indent > SHOWN / 2 ? start - SHOWN / 4 : indent);
  const to = whole(line, Math.min(line.length, from + SHOWN));
  const before = inertLine(line.slice(from, start));
  const marked = inertLine(line.slice(start, Math.min(end, to)));
  const after = inertLine(line.slice(Math.min(end, to), to));
  const lead = from > indent ? '… ' : '';
  const tail = to < line.length ? ' …' : '';
  return {
    text: `${lead}${before}${marked}${after}${tail}`.trimEnd(),
    mark: `${' '.repeat(lead.length + columns(before))}${'^'.repeat(Math.max(1, columns(marked)))}`,
  };
}

/** An offset that is not between the halves of one character. */
const whole = (line: string, offset: number): number =>
  /[\udc00-\udfff]/.test(line.charAt(offset)) && /[\ud800-\udbff]/.test(line.charAt(offset - 1))
    ? offset - 1
    : offset;

const NO_COLUMN = /[\p{Mn}\p{Me}\u200b-\u200d]/u;
const TWO_COLUMNS =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]|\p{Emoji_Presentation}/u;

/** Terminal columns, near enough: wide scripts and emoji count twice, combining marks not. */
function columns(text: string): number {
  let sum = 0;
  for (const character of text)
    if (!NO_COLUMN.test(character)) sum += TWO_COLUMNS.test(character) ? 2 : 1;
  return sum;
}
