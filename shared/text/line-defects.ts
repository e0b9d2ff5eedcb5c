/** What is wrong with a line that should hold a key and does not. */

import { pair, scalar, span } from '../syntax/nodes.ts';
import type { Pair } from '../syntax/tree.ts';
import { markKind } from './merge-marks.ts';
import { splitScalar } from './misread.ts';
import { fix, type Problems } from './problems.ts';

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
