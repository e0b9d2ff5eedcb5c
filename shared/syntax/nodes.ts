/** Builds and moves trees. */
import type { KeyShape } from './keys.ts';
import type { MapNode, Node, Pair, ScalarNode, ScalarStyle, SeqNode, Span } from './tree.ts';

export const span = (start: number, end: number): Span => ({ start, end });

export const scalar = (
  text: string,
  style: ScalarStyle,
  start: number,
  end: number,
): ScalarNode => ({ kind: 'scalar', span: { start, end }, text, style });

/** Of a scalar on one line, by its first character. */
const styleOf = (mark: string | undefined): ScalarStyle =>
  mark === '"' ? 'double' : mark === "'" ? 'single' : 'plain';

export const keyOf = (text: string, { key, start, end }: KeyShape): ScalarNode =>
  scalar(key, styleOf(text[start]), start, end);

/** `colonEnd`: just behind the colon; the key's end where there is none. */
export const pair = (key: ScalarNode, value: Node | null, colonEnd: number): Pair => ({
  key,
  value,
  span: { start: key.span.start, end: value ? value.span.end : colonEnd },
});

const toColon = /(?:\s|(?<=\s)#[^\r\n]*)*:/y;

/** Offset of a pair's colon; -1 where it has none. */
export function colonOf(text: string, { key }: Pair): number {
  toColon.lastIndex = key.span.end;
  return toColon.test(text) ? toColon.lastIndex - 1 : -1;
}

/** A block mapping of at least one pair. */
export const blockMap = (pairs: readonly Pair[]): MapNode => ({
  kind: 'map',
  span: { start: pairs[0]?.span.start ?? 0, end: pairs.at(-1)?.span.end ?? 0 },
  flow: false,
  pairs,
});

/** `start`: the first dash; `lastDash`: the last one, for a list that ends in an empty item. */
export const blockSeq = (
  items: readonly (Node | null)[],
  start: number,
  lastDash: number,
): SeqNode => ({
  kind: 'seq',
  span: { start, end: items.at(-1)?.span.end ?? lastDash + 1 },
  flow: false,
  items,
});

export type Move = (offset: number) => number;

export const moveSpan = (at: Span, move: Move): Span => ({
  start: move(at.start),
  end: move(at.end),
});

/** The same tree with each offset moved. */
export function moveNode<T extends Node>(node: T, move: Move): T {
  const at = moveSpan(node.span, move);
  switch (node.kind) {
    case 'scalar':
      return { ...node, span: at };
    case 'map':
      return { ...node, span: at, pairs: node.pairs.map((each) => movePair(each, move)) };
    case 'seq':
      return { ...node, span: at, items: node.items.map((item) => item && moveNode(item, move)) };
  }
}

const movePair = (moved: Pair, move: Move): Pair => ({
  key: moveNode(moved.key, move),
  value: moved.value && moveNode(moved.value, move),
  span: moveSpan(moved.span, move),
});

export const shiftNode = <T extends Node>(node: T, by: number): T =>
  by === 0 ? node : moveNode(node, (offset) => offset + by);
