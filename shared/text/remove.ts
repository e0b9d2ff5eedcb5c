/** Removes a pair or an item, with its own lines or comma. */

import type { Node, Path, Span } from '../syntax/tree.ts';
import type { Home, TextEdit } from './edit-home.ts';
import { pairIn } from './edit-home.ts';
import { nextLine } from './layout-text.ts';
import { nodeAt } from './path.ts';

/**
 * Removes what stands at the home's path. What would be left empty above it goes too, down to a
 * path of `least` steps: an empty mapping in an entry says nothing that a missing key does not.
 */
export function removeAt(home: Home, least: number): readonly TextEdit[] {
  const { tree, index, chunk } = home;
  let path: Path = home.path;
  if (!spanAt(tree, path)) return [];
  while (path.length > least && sizeOf(nodeAt(tree, path.slice(0, -1))) === 1)
    path = path.slice(0, -1);
  const parent = nodeAt(tree, path.slice(0, -1));
  const place = spanAt(tree, path) as Span;
  const flow = parent !== null && parent.kind !== 'scalar' && parent.flow;
  if (flow && sizeOf(parent) === 1) {
    const { start, end } = parent.span;
    return [{ chunk: index, span: { start: start + 1, end: end - 1 }, text: '' }];
  }
  const span = flow ? withComma(place, childSpans(parent)) : wholeLines(chunk.text, place);
  return [{ chunk: index, span, text: '' }];
}

function spanAt(tree: Node, path: Path): Span | null {
  const parent = nodeAt(tree, path.slice(0, -1));
  const last = path.at(-1);
  if (parent?.kind === 'seq') return (typeof last === 'number' && parent.items[last]?.span) || null;
  return pairIn(parent, last)?.span ?? null;
}

const sizeOf = (node: Node | null): number =>
  node?.kind === 'map' ? node.pairs.length : node?.kind === 'seq' ? node.items.length : 0;

const childSpans = (node: Node): readonly Span[] =>
  node.kind === 'map'
    ? node.pairs.map((pair) => pair.span)
    : node.kind === 'seq'
      ? node.items.flatMap((item) => (item ? [item.span] : []))
      : [];

/** Up to the next item, or from behind the one before. */
function withComma(place: Span, all: readonly Span[]): Span {
  const index = all.findIndex((each) => each.start === place.start);
  const next = all[index + 1];
  if (next) return { start: place.start, end: next.start };
  const before = all[index - 1];
  return { start: before?.end ?? place.start, end: place.end };
}

/** From the start of the first line to the end of the last, comments on it included. */
function wholeLines(text: string, place: Span): Span {
  const start = text.slice(0, place.start).search(/[^\r\n]*$/);
  const end = nextLine(text, place.end);
  // `- key: …`: the pair shares its line with the dash, which stays with the next key.
  const before = text.slice(start, place.start);
  if (/^ *(- +)+$/.test(before)) {
    const following = text.slice(end).search(/[^ ]/);
    const isSibling =
      following >= 0 && following === before.length && text[end + following] !== '-';
    if (isSibling) return { start: place.start, end: end + following };
  }
  return { start, end };
}
