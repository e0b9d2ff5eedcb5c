/** Keys in the wrong column. */
import { indentAt, type LineTable } from '../syntax/lines.ts';
import { span } from '../syntax/nodes.ts';
import type { Span } from '../syntax/tree.ts';
import { fixOf, type Problems } from './problems.ts';

/** Tells it of the key on the line at `from`; the fix moves all lines up to `to` with it. */
export function tellOutOfLine(
  text: string,
  lines: LineTable,
  from: number,
  to: number,
  indent: number,
  meant: number,
  problems: Problems,
): void {
  const key = from + indent;
  const end = key + Math.max(1, text.slice(key, to).search(/[:\s]|$/));
  const args = { found: String(indent), meant: String(meant) };
  const edits = moveLines(text, lines, from, to, meant - indent);
  problems.syntax('out-of-line', span(key, end), args, [fixOf('indent', args, edits)]);
}

function moveLines(text: string, lines: LineTable, from: number, to: number, by: number) {
  const edits: { span: Span; text: string }[] = [];
  for (const { start, end } of lines.between(from, to)) {
    const spaces = indentAt(text, start, end);
    const isEmpty = start + spaces >= end;
    if (!isEmpty && by > 0) edits.push({ span: span(start, start), text: ' '.repeat(by) });
    const fewer = Math.min(-by, spaces);
    if (!isEmpty && fewer > 0) edits.push({ span: span(start, start + fewer), text: '' });
  }
  return edits;
}
