/** How far values and lines reach, as a caret's place needs to know. */
import { closingQuote } from './keys.ts';
import { indentAt, isBlank, type Line, LineReader } from './lines.ts';

/** Where a value on one line ends, and up to where a caret still writes on it. */
export interface Extent {
  readonly to: number;
  readonly until: number;
}

/** Of the quoted or plain value that starts at `start` of a line that ends at `end`. */
export function valueExtent(text: string, start: number, end: number): Extent {
  if (text[start] === '"' || text[start] === "'") {
    const close = closingQuote(text, start, end);
    const to = close < 0 ? end : close + 1;
    return { to, until: to };
  }
  const written = text.slice(start, end);
  const gap = written.search(/\s#/);
  const until = start + (gap < 0 ? written.length : gap + 1);
  return { to: start + written.slice(0, until - start).trimEnd().length, until };
}

export function lineHolding(text: string, at: number): Line {
  const reader = new LineReader(text);
  let line = reader.at(0);
  while (line.end < at && line.next > line.end) line = reader.at(line.next);
  return line;
}

/**
 * Column of the next line that says something; what is written before it must not stand left of
 * it. `behind`: where the text has no such line.
 */
export function nextColumn(text: string, lineStart: number, behind: number): number {
  const reader = new LineReader(text);
  let line = reader.at(lineStart);
  while (line.next > line.end) {
    line = reader.at(line.next);
    const indent = indentAt(text, line.start, line.end);
    if (!isBlank(text, line.start + indent, line.end)) return indent;
  }
  return behind;
}
