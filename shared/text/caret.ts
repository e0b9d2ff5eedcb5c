/**
 * What stands round a caret: which mapping, list or value is being written there, and how far it
 * is. Read from lines and columns and not from the tree, since the text at a caret is half-written
 * by nature and no reading of the whole can be relied on there.
 */
import { type Around, BlockScan, type Level } from './caret-block.ts';
import type { Chunk } from './chunk.ts';
import type { ChunkedText, TextPosition } from './chunked-text.ts';
import type { Path } from './tree.ts';

export interface Caret {
  /**
   * From the top of the file: to the mapping of a `key`, to the list of an `item` that still needs
   * its dash, to the `value`. `open`: to a value on a line of its own, which may become a mapping
   * or a list as well.
   */
  readonly path: Path;
  readonly slot: 'key' | 'value' | 'open' | 'item';
  /** Within braces or brackets. */
  readonly flow: boolean;
  readonly line: number;
  /** Characters of the line that new text replaces. */
  readonly from: number;
  readonly to: number;
  /** Behind the colon of a key under the caret; `to` where there is none. */
  readonly colonEnd: number;
  /** What stands there, and how much of it before the caret. */
  readonly word: string;
  readonly typed: string;
  /** What keeps the new text from running into its neighbours. */
  readonly before: string;
  readonly after: string;
  /** Column in which a key or a dash begins. */
  readonly column: number;
  /** Of a key under the caret: whether a colon follows, and a value behind it. */
  readonly pair: 'word' | 'colon' | 'value';
  /** Keys of the mapping, or items of the list, beside the one under the caret. */
  readonly beside: readonly string[];
}

/** null: within a comment or prose, or on nothing that a plan has a word for. */
export function caretAt(text: ChunkedText, position: TextPosition): Caret | null {
  const { index, offset } = text.locate(position);
  const { chunks } = text;
  let first = index;
  while (first > 0 && chunks[first]!.kind === 'loose') first--;
  const before = chunks.slice(first, index).map((chunk) => chunk.text);
  const start = before.reduce((sum, one) => sum + one.length, 0);
  const behind = chunks.slice(index + 1).find(({ kind }) => kind !== 'loose');
  const source = before.join('') + chunks[index]!.text;
  const scan = new BlockScan(source, start + offset, {
    above: levelsAbove(chunks, first),
    columnBehind: behind?.indent ?? 0,
  });
  const around = scan.run();
  const found = around && belowHeader(around, chunks);
  return found && inFile(found, chunks, index, text.positionOf(index, offset));
}

/** The mappings that hold the chunk at `index`, outermost first. */
function levelsAbove(chunks: readonly Chunk[], index: number): Level[] {
  const { kind, path } = chunks[index]!;
  if (kind === 'loose') return [];
  return path.slice(0, -1).map((key, depth): Level => {
    const above = path.slice(0, depth + 1);
    const header = chunks.findLast(
      (chunk, place) => place < index && chunk.kind === 'header' && samePath(chunk.path, above),
    );
    const column = header?.indent ?? depth * USUAL_STEP;
    return { kind: 'map', column, key, index: -1, pending: false, names: [] };
  });
}

const USUAL_STEP = 2;

/** A section's value stands in the chunks behind its own. */
function belowHeader(around: Around, chunks: readonly Chunk[]): Around | null {
  const { path, slot, pair, word } = around;
  const isKey = slot === 'key' && pair === 'colon';
  if (around.flow || !(isKey || slot === 'value')) return around;
  const section = isKey ? [...path, word] : path;
  if (!chunks.some((chunk) => isChild(chunk, section))) return around;
  return isKey ? { ...around, pair: 'value' } : null;
}

/** Entries of a section are chunks of their own: what stands beside one is seen only from there. */
function inFile(
  around: Around,
  chunks: readonly Chunk[],
  index: number,
  position: TextPosition,
): Caret {
  const { path, slot, flow, level, blank, ...rest } = around;
  const holds = !flow && (slot === 'key' || slot === 'open');
  const own = holds ? chunks.filter((chunk) => isChild(chunk, path)) : [];
  const others = own.filter(
    (chunk) => slot !== 'key' || chunk !== chunks[index] || chunk.path.at(-1) !== rest.word,
  );
  const beside = new Set([...(level?.names ?? []), ...others.map((chunk) => chunk.path.at(-1)!)]);
  const column = slot === 'open' && own[0] ? own[0].indent : rest.column;
  const moves = blank && column !== position.character;
  return {
    ...rest,
    path,
    slot,
    flow,
    line: position.line,
    column,
    ...(moves && { from: 0, before: ' '.repeat(column) }),
    beside: [...beside],
  };
}

const isChild = ({ kind, path }: Chunk, of: Path): boolean =>
  kind !== 'loose' && path.length === of.length + 1 && of.every((key, step) => key === path[step]);

const samePath = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((key, step) => key === b[step]);
