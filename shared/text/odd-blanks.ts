/**
 * Blanks that look like spaces and are none (web pages and word processors write them), and byte
 * order marks within a file (files put one behind the other have them). Where YAML wants spaces,
 * before a line's text and behind its key's colon, they are read as the spaces that were meant.
 */
import { span } from '../syntax/nodes.ts';
import type { Node, Span } from '../syntax/tree.ts';
import { fixOf, type Problems } from './problems.ts';
import { type Spaced, spaced } from './tabs.ts';

/** Of Unicode's category Zs all but the space itself. */
const BLANKS = '\\u00a0\\u1680\\u2000-\\u200a\\u202f\\u205f\\u3000';
const MARK = '\ufeff';

const anyOdd = new RegExp(`[${BLANKS}${MARK}]`);
const anyBlank = new RegExp(`[${BLANKS}]`);
/** What a line begins with, and behind its key the blanks up to the value. */
const linePlaces = new RegExp(
  `(?<![^\\r\\n])([ ${BLANKS}${MARK}]*)(?:((?:- +)*[a-z][a-z0-9-]*:)([${BLANKS}][ ${BLANKS}]*))?`,
  'g',
);
/** A mark that leads what `yaml` is given comes out of it as U+FFFD. */
const oddStart = new RegExp(`^[${BLANKS}${MARK}\\ufffd]`);

const onlyOdd = new RegExp(`^[${BLANKS}${MARK}\\ufffd]+$`);

/** How many odd blanks a text begins with. */
export const oddBlanksAhead = (text: string): number =>
  new RegExp(`^[${BLANKS}]*`).exec(text)?.[0].length ?? 0;

interface Edit {
  readonly span: Span;
  readonly text: string;
}

/**
 * Byte order marks take no room. On a line with nothing else one stays, so that a CR and an LF
 * around it don't become one line break.
 */
const asSpaces = (blanks: string, isAll: boolean): string =>
  (isAll ? blanks : blanks.replaceAll(MARK, '')).replace(/[^ ]/g, ' ');

/** Where spaces are read for what stands there. */
function oddPlaces(text: string): Edit[] {
  if (!anyOdd.test(text)) return [];
  const edits: Edit[] = [];
  const add = (start: number, blanks: string): void => {
    if (!anyOdd.test(blanks)) return;
    const end = start + blanks.length;
    const isAll = end >= text.length || '\r\n'.includes(text[end] as string);
    edits.push({ span: span(start, end), text: asSpaces(blanks, isAll) });
  };
  for (const found of text.matchAll(linePlaces)) {
    const [, before = '', key = '', behind = ''] = found;
    add(found.index, before);
    add(found.index + before.length + key.length, behind);
  }
  return edits;
}

/** `text` as it is cut into chunks, and the end of a chunk in it as one in `text`; null: it is that. */
export function withSpaces(text: string, isTop: boolean): Spaced | null {
  // The file's own mark is known to the cutting.
  const first = isTop && text.startsWith(MARK) ? 1 : 0;
  const edits = oddPlaces(text.slice(first)).map((edit) => ({
    ...edit,
    span: span(edit.span.start + first, edit.span.end + first),
  }));
  if (edits.length === 0) return null;
  const read = spaced(text, edits);
  // A mark at a line's start belongs to that line, not to the one before. Ends come in their order.
  let [next, by] = [0, 0];
  const back = (end: number): number => {
    for (let edit = edits[next]; edit && edit.span.start - by < end; edit = edits[++next])
      by += edit.span.end - edit.span.start - edit.text.length;
    return end + by;
  };
  return { text: read.text, back };
}

/**
 * A chunk's text with spaces where they were meant, and the blanks told; null where nothing of it
 * was. Marks are told as characters that have no place in a plan.
 */
export function readOddBlanks(text: string, problems: Problems): Spaced | null {
  const edits = oddPlaces(text);
  if (edits.length === 0) return null;
  const blanks = edits.filter(({ span: at }) => anyBlank.test(text.slice(at.start, at.end)));
  const [first] = blanks;
  if (first) {
    const start = first.span.start + text.slice(first.span.start).search(anyBlank);
    const character = `U+${text.charCodeAt(start).toString(16).toUpperCase().padStart(4, '0')}`;
    const place = span(start, start + oddBlanksAhead(text.slice(start, first.span.end)));
    problems.syntax('odd-blank', place, { character }, [fixOf('replace-blanks', {}, blanks)]);
  }
  return spaced(text, edits);
}

/** Whether a key begins with an odd blank, which was meant to indent it, or a value is nothing else. */
export function hasOddKey(node: Node | null): boolean {
  if (node?.kind === 'seq') return node.items.some(hasOddKey);
  if (node?.kind === 'scalar') return node.style === 'plain' && onlyOdd.test(node.text);
  if (node?.kind !== 'map') return false;
  return node.pairs.some(({ key, value }) => oddStart.test(key.text) || hasOddKey(value));
}
