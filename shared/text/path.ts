/** Converts between paths and nodes of a tree. */
import type { MapNode, Node, Pair, Path, Span } from '../syntax/tree.ts';

/** Whether `path` is `of`, or leads on from there. */
export const isBelow = (path: Path, of: Path): boolean =>
  of.every((key, step) => key === path[step]);

export const samePath = (a: Path, b: Path): boolean => a.length === b.length && isBelow(a, b);

/** The value at `path` below `node`; null where nothing stands there. */
export function nodeAt(node: Node | null, path: Path): Node | null {
  let at = node;
  for (const step of path) {
    if (at?.kind === 'map') at = pairOf(at, step)?.value ?? null;
    else if (at?.kind === 'seq') at = (typeof step === 'number' && at.items[step]) || null;
    else return null;
  }
  return at;
}

/** The pair at `path` below `node`: its last step is a key; null for an item, or where none is. */
export function pairAt(node: Node | null, path: Path): Pair | null {
  const last = path.at(-1);
  if (last === undefined) return null;
  const parent = nodeAt(node, path.slice(0, -1));
  return parent?.kind === 'map' ? (pairOf(parent, last) ?? null) : null;
}

/** The first pair under a key: a second one of the same name has a finding and is not read. */
const pairOf = (map: MapNode, key: string | number): Pair | undefined =>
  map.pairs.find((pair) => pair.key.text === key);

/** Which part of a chunk an offset falls on. */
interface Spot {
  /** From the entry's own value downward; [] is the entry itself. */
  readonly path: Path;
  /** `inside`: within the mapping or list at `path`, or behind its key, on nothing of its own. */
  readonly on: 'key' | 'value' | 'inside';
  /** What the offset falls on; null where that is nothing. */
  readonly span: Span | null;
}

/** What stands at `offset` of a chunk with `tree`; null outside of the entry's pair. */
export function pathAt(tree: MapNode | null, offset: number): Spot | null {
  const entry = tree?.pairs[0];
  if (!entry || offset < entry.span.start || offset > entry.span.end) return null;
  return inPair(entry, [], offset);
}

const holds = (span: Span, offset: number): boolean => offset >= span.start && offset <= span.end;

function inPair(pair: Pair, path: Path, offset: number): Spot {
  if (holds(pair.key.span, offset)) return { path, on: 'key', span: pair.key.span };
  return pair.value && holds(pair.value.span, offset)
    ? inNode(pair.value, path, offset)
    : { path, on: 'inside', span: null };
}

function inNode(node: Node, path: Path, offset: number): Spot {
  if (node.kind === 'scalar') return { path, on: 'value', span: node.span };
  if (node.kind === 'map') {
    for (const pair of node.pairs) {
      if (holds(pair.span, offset)) return inPair(pair, [...path, pair.key.text], offset);
    }
  } else {
    for (const [index, item] of node.items.entries()) {
      if (item && holds(item.span, offset)) return inNode(item, [...path, index], offset);
    }
  }
  return { path, on: 'inside', span: null };
}

/** Column of `offset` in its line. */
export const columnOf = (text: string, offset: number): number =>
  offset - (Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1);
