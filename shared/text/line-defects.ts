/** What is wrong with a line that should hold a key and does not, or not where it stands. */

import { indentAt, LineReader, type LineTable } from '../syntax/lines.ts';
import { pair, scalar, span } from '../syntax/nodes.ts';
import type { Pair, Span } from '../syntax/tree.ts';
import { markKind } from './merge-marks.ts';
import { splitScalar } from './misread.ts';
import { fix, fixOf, type Problems } from './problems.ts';
import type { Oddity } from './split-state.ts';

/** Tells it, and gives the pair where it can be made out. `start` … `end`: the line, no break. */
export function tellLine(
  text: string,
  start: number,
  end: number,
  problems: Problems,
): Pair | null {
  const line = text.slice(start, end);
  const first = Math.max(0, line.search(/[^ ]/));
  const content = line.slice(first).trimEnd();
  const at = start + first;
  const place = span(at, at + Math.max(1, content.length));
  if (content.startsWith('\t')) {
    problems.syntax('tab', span(at, at + (/^\t+/.exec(content)?.[0].length ?? 1)), {}, []);
    return null;
  }
  if (markKind(content, 0, content.length)) {
    problems.syntax('conflict-marker', place, { text: content.slice(0, 7) });
    return null;
  }
  const comment = content.search(/[ \t]#/);
  const written = (comment < 0 ? content : content.slice(0, comment)).trimEnd();
  if (/^[a-z][a-z0-9-]*:[^\s:/]/.test(written)) {
    const { key, value } = splitScalar(scalar(written, 'plain', at, at + written.length), problems);
    return pair(key, value, key.span.end + 1);
  }
  if (/^[a-z][a-z0-9-]*$/.test(written)) {
    const after = at + written.length;
    problems.syntax('missing-colon', span(at, after), { text: written }, [
      fix('add-colon', after, after, ':'),
    ]);
    return null;
  }
  if (/^[\]}]/.test(content)) {
    problems.syntax('stray-bracket', span(at, at + 1), { bracket: content[0] as string });
    return null;
  }
  if (/^[?:]([ \t]|$)/.test(content)) {
    problems.outside('complex-key', span(at, at + 1));
    return null;
  }
  if (/^-([ \t]|$)/.test(content)) {
    problems.syntax('stray-item', span(at, at + 1));
    return null;
  }
  if (/^["']/.test(content) && !content.slice(1).includes(content[0] as string)) {
    problems.syntax('unclosed-quote', span(at, at + 1), { quote: content[0] as string });
    return null;
  }
  problems.syntax('no-key', place, { text: content.slice(0, 60) });
  return null;
}

/** Problems of lines that are no part of a plan. */
export function tellLoose(text: string, oddity: Oddity | null, problems: Problems): void {
  if (oddity === null) return;
  const line = new LineReader(text).at(0);
  const written = text.slice(0, line.end);
  const start = written.search(/[^ \t]/);
  const end = written.trimEnd().length;
  const place = span(start, end);
  switch (oddity) {
    case 'conflict-marker':
      problems.syntax('conflict-marker', place, { text: written.slice(0, 7) });
      return;
    case 'document-marker':
    case 'directive': {
      const isAlone = oddity === 'directive' || /^(---|\.\.\.)[ \t]*(#.*)?$/.test(written);
      const fixes = isAlone ? [fix('remove-line', 0, line.next, '')] : [];
      problems.outside(oddity, place, { text: written.slice(0, end).slice(0, 60) }, fixes);
      return;
    }
    case 'complex-key':
      problems.outside('complex-key', span(start, start + 1));
      return;
    default:
      tellLine(text, 0, line.end, problems);
  }
}

/** The key on the line at `from` is in the wrong column; the fix moves all lines up to `to`. */
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
