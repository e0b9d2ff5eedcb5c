/** Where hints stand on their lines, and how many of them a line has room for. */
import type { InlayHint } from '../api/facade.ts';
import type { Position } from '../api/located.ts';
import type { ChunkedText } from '../text/chunked-text.ts';

/** What an editor shows beside a line without pushing the next value out of sight. */
export const LONGEST_LABEL = 40;
/** An editor cuts the hints of a line off behind so many characters, wherever that is (43 as it comes). */
const LONGEST_LINE = 43;

/**
 * Behind the value that ends at `end`; at the end of its line where that ends in a comment which
 * stands in one column with others: the hint would push it out.
 */
export function hintPlace(text: ChunkedText, end: Position): Position {
  const { index, offset } = text.locate(end);
  const whole = text.chunks[index]?.text ?? '';
  const start = whole.lastIndexOf('\n', offset - 1) + 1;
  const lines = whole.slice(0, start).split('\n').length - 1;
  const all = whole.split('\n');
  const line = (all[lines] ?? '').trimEnd();
  const column = commentColumn(line, offset - start);
  if (column < 0) return end;
  const isOneOfMore = all.some((other, at) => at !== lines && commentColumn(other, 0) === column);
  return isOneOfMore ? { line: end.line, character: line.length } : end;
}

/** Where the comment of a line begins, behind `from`; -1: it has none. */
function commentColumn(line: string, from: number): number {
  const bare = line.replace(/"(?:[^"\\]|\\.)*"|'[^']*'/g, (quoted) => '"'.repeat(quoted.length));
  const behind = bare.slice(from).search(/\s#/);
  return behind < 0 ? -1 : from + behind + 1;
}

/** The first hint of each line, and of those behind it as many as it shows whole. */
export function fitting(hints: readonly InlayHint[]): readonly InlayHint[] {
  const used = new Map<number, number>();
  return hints.filter(({ position: { line }, label }) => {
    const before = used.get(line);
    const length = (before ?? 0) + label.length;
    if (before !== undefined && length > LONGEST_LINE) return false;
    used.set(line, length);
    return true;
  });
}
