/**
 * Tabs as indentation, which YAML doesn't allow. They are read as the spaces that the fix writes.
 */
import { contentLines, lastAtMost } from '../syntax/lines.ts';
import { span } from '../syntax/nodes.ts';
import type { Span } from '../syntax/tree.ts';
import { fixOf, type Problems } from './problems.ts';

const STEP = 2;

export interface Spaced {
  readonly text: string;
  /** An offset in `text` as one in the text with its tabs. */
  readonly back: (offset: number) => number;
}

/**
 * Names the first tab and gives the text with spaces; null where no line is indented by tabs. One
 * tab is taken for the column in which the entry's other fields stand.
 */
export function readTabs(text: string, indent: number, problems: Problems): Spaced | null {
  const found = [...text.matchAll(/^ *\t[ \t]*(?=[^ \t\r\n#])/gm)];
  if (found.length === 0) return null;
  const first = fieldColumn(text, indent) ?? indent + STEP;
  const edits = found.map(({ 0: written, index }) => {
    const tabs = Math.min(written.split('\t').length - 1, 64);
    // The entry's own name leads its text.
    const column = index === 0 ? indent : first + STEP * (tabs - 1);
    return { span: span(index, index + written.length), text: ' '.repeat(column) };
  });
  const at = text.indexOf('\t', edits[0]?.span.start);
  const end = at + (/^\t+/.exec(text.slice(at))?.[0].length ?? 1);
  problems.syntax('tab', span(at, end), {}, [fixOf('replace-tabs', {}, edits)]);
  return spaced(text, edits);
}

/** Column of the first line that spaces alone indent further than `indent`. */
function fieldColumn(text: string, indent: number): number | undefined {
  for (const line of contentLines(text, 0, text.length))
    if (line.indent > indent && text[line.at] !== '\t') return line.indent;
  return undefined;
}

/** `text` with edits made, in the order of the text. */
export function spaced(text: string, edits: readonly { span: Span; text: string }[]): Spaced {
  let made = '';
  let from = 0;
  // Where text that was kept starts, here and there.
  const here = [0];
  const there = [0];
  for (const edit of edits) {
    made += text.slice(from, edit.span.start) + edit.text;
    from = edit.span.end;
    here.push(made.length);
    there.push(from);
  }
  made += text.slice(from);
  const back = (offset: number): number => {
    const index = lastAtMost(here, offset);
    const limit = edits[index]?.span.start ?? text.length;
    return Math.min((there[index] as number) + offset - (here[index] as number), limit);
  };
  return { text: made, back };
}
