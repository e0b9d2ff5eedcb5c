/** Characters that have no place in a plan, visible or not (YAML 1.2.2, 5.1, c-printable). */

import { span } from '../syntax/nodes.ts';
import type { TextFix } from './problem.ts';
import { fix, fixOf, type Problems } from './problems.ts';

/** A run of: U+FFFD, controls other than tab and breaks, non-characters, BOMs, lone surrogates. */
const outOfPlace = /\uFFFD+|(?:(?![\t\n\r\x85])\p{Cc}|[\uFEFF\uFFFE\uFFFF]|\p{Cs})+/gu;

/** Whether any of them, or half of a surrogate pair, is there; far cheaper than the search. */
function hasSuspect(text: string): boolean {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code >= 0x20 && code < 0x7f) continue;
    if (code < 0x20) {
      if (code !== 0x09 && code !== 0x0a && code !== 0x0d) return true;
    } else if (code <= 0x9f ? code !== 0x85 : code >= 0xd800) {
      if (code <= 0xdfff || code === 0xfeff || code >= 0xfffd) return true;
    }
  }
  return false;
}

export function checkCharacters(text: string, problems: Problems): void {
  if (!hasSuspect(text)) return;
  outOfPlace.lastIndex = 0;
  for (
    let found = outOfPlace.exec(text);
    found && !problems.isFull;
    found = outOfPlace.exec(text)
  ) {
    const start = found.index;
    const end = start + found[0].length;
    if (found[0].startsWith('\uFFFD')) {
      problems.syntax('not-utf-8', span(start, end), {});
    } else {
      const point = (found[0].codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0');
      problems.syntax('control-character', span(start, end), { character: `U+${point}` }, [
        fix('remove-character', start, end, ''),
      ]);
    }
  }
}

/**
 * A lone CR ends a line to the editor and to YAML, but not to every reader of YAML. The text is
 * read with a line feed in its place, and the first is named.
 */
export function readLoneReturns(text: string, problems: Problems): string {
  if (!text.includes('\r')) return text;
  const edits: TextFix['edits'][number][] = [];
  const read = text.replace(/\r(?!\n)/g, (_, at: number) => {
    edits.push({ span: span(at, at + 1), text: '\n' });
    return '\n';
  });
  const first = edits[0];
  if (first) {
    problems.syntax('lone-return', first.span, {}, [fixOf('break-lines', {}, edits)]);
  }
  return read;
}
