/** Inserts a new pair or item into a mapping or a list. */
import { colonOf } from '../syntax/nodes.ts';
import type { MapNode, Pair, SeqNode } from '../syntax/tree.ts';
import type { Home, TextEdit } from './edit-home.ts';
import { pairIn } from './edit-home.ts';
import { indented, inlineText, keyed, lineEnd, lineEndOf, stepOf } from './layout-text.ts';
import { columnOf, nodeAt } from './path.ts';

/** A pair at the home's path, with whatever mappings lead there. */
export function insertPair(home: Home, text: string): readonly TextEdit[] {
  const { tree, path } = home;
  for (let length = path.length - 1; length > 0; length--) {
    const keys = path.slice(length);
    if (keys.some((key) => typeof key !== 'string')) return [];
    const [key, ...deeper] = keys as string[];
    const node = nodeAt(tree, path.slice(0, length));
    if (node?.kind === 'map') {
      return node.flow
        ? intoFlow(home, node, key as string, deeper, text)
        : intoBlock(home, node, key as string, deeper, text);
    }
    if (node) return [];
    const owner = pairIn(nodeAt(tree, path.slice(0, length - 1)), path[length - 1]);
    if (owner) return belowKey(home, owner, length, key as string, deeper, text);
  }
  return [];
}

/** `deeper` keys around `text`, in flow style. */
const nested = (deeper: readonly string[], text: string): string =>
  deeper.reduceRight((inner, key) => `{ ${key}: ${inner} }`, inlineText(text));

/** The same as lines, without indentation. */
const nestedLines = (deeper: readonly string[], text: string, step: number): string =>
  deeper.reduceRight((inner, key) => keyed(key, inner, 0, step, '\n'), text);

function intoFlow(home: Home, map: MapNode, key: string, deeper: readonly string[], text: string) {
  const written = `${key}: ${nested(deeper, text)}`;
  const last = map.pairs.at(-1);
  if (last) return [insert(home, last.span.end, `, ${written}`)];
  return [{ chunk: home.index, span: map.span, text: `{ ${written} }` }];
}

/** At the end of the mapping: on the line below its last pair, before blank lines and comments. */
function intoBlock(home: Home, map: MapNode, key: string, deeper: readonly string[], text: string) {
  const { chunk } = home;
  const column = columnOf(chunk.text, map.span.start);
  const step = stepOf(chunk);
  const lines = keyed(key, nestedLines(deeper, text, step), column, step, lineEndOf(chunk));
  return [insert(home, lineEnd(chunk.text, map.span.end), lineEndOf(chunk) + lines)];
}

/** Below a key that has no value yet; beside it, in flow style, where it stands in brackets. */
function belowKey(
  home: Home,
  owner: Pair,
  length: number,
  key: string,
  deeper: readonly string[],
  text: string,
) {
  const { chunk, tree, path } = home;
  const parent = nodeAt(tree, path.slice(0, length - 1));
  const colon = colonOf(chunk.text, owner);
  if (parent?.kind === 'map' && parent.flow) {
    const at = colon < 0 ? owner.key.span.end : colon + 1;
    return [insert(home, at, `${colon < 0 ? ':' : ''} { ${key}: ${nested(deeper, text)} }`)];
  }
  const eol = lineEndOf(chunk);
  const step = stepOf(chunk);
  const column = columnOf(chunk.text, owner.key.span.start) + step;
  const lines = keyed(key, nestedLines(deeper, text, step), column, step, eol);
  const before = colon < 0 ? [insert(home, owner.key.span.end, ':')] : [];
  return [...before, insert(home, lineEnd(chunk.text, owner.span.end), eol + lines)];
}

/** One more item at the list's end. */
export function insertItem(home: Home, list: SeqNode, text: string): readonly TextEdit[] {
  const { chunk, index } = home;
  const last = list.items.findLast((item) => item !== null);
  if (list.flow) {
    return last
      ? [insert(home, last.span.end, `, ${inlineText(text)}`)]
      : [{ chunk: index, span: list.span, text: `[${inlineText(text)}]` }];
  }
  const eol = lineEndOf(chunk);
  const column = columnOf(chunk.text, list.span.start);
  const lines = indented(text, column + 2, eol).slice(column + 2);
  return [
    insert(home, lineEnd(chunk.text, list.span.end), `${eol}${' '.repeat(column)}- ${lines}`),
  ];
}

const insert = ({ index }: Home, at: number, text: string): TextEdit => ({
  chunk: index,
  span: { start: at, end: at },
  text,
});
