/** What stands round a caret in a file: which mapping, list or value is being written there. */
import { type Around, around } from '../syntax/around.ts';
import type { Outer } from '../syntax/syntax.ts';
import type { Chunk } from './chunk.ts';
import type { ChunkedText, TextPosition } from './chunked-text.ts';
import type { Path } from './tree.ts';

/** What stands around, from the top of the file; offsets are those of the line. */
export interface Caret extends Omit<Around, 'blank'> {
  readonly line: number;
  /** What stands there, and how much of it before the caret. */
  readonly word: string;
  readonly typed: string;
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
  // A byte order mark takes no column, and nothing is written before it.
  const mark = source.startsWith('\ufeff') ? 1 : 0;
  const at = start + offset - mark;
  if (at < 0) return null;
  const plain = source.slice(mark);
  const found = around(plain, at, {
    above: outerOf(chunks, first),
    columnBehind: behind?.indent ?? 0,
  });
  const own = found && belowHeader(found, plain, chunks);
  return own && inFile(own, { text: plain, at, chunks, index }, text.positionOf(index, offset));
}

/** The mappings that hold the chunk at `index`, outermost first: at least the plan itself. */
function outerOf(chunks: readonly Chunk[], index: number): Outer[] {
  const { kind, path } = chunks[index]!;
  if (kind === 'loose' || path.length < 2) return [{ column: 0, key: '' }];
  return path.slice(0, -1).map((key, depth) => {
    const above = path.slice(0, depth + 1);
    const header = chunks.findLast(
      (chunk, place) => place < index && chunk.kind === 'header' && samePath(chunk.path, above),
    );
    return { column: header?.indent ?? depth * USUAL_STEP, key };
  });
}

const USUAL_STEP = 2;

/** A section's value stands in the chunks behind its own. */
function belowHeader(around: Around, text: string, chunks: readonly Chunk[]): Around | null {
  const { path, slot, pair, from, to } = around;
  const isKey = slot === 'key' && pair === 'colon';
  if (around.flow || !(isKey || slot === 'value')) return around;
  const section = isKey ? [...path, text.slice(from, to)] : path;
  if (!chunks.some((chunk) => isChild(chunk, section))) return around;
  return isKey ? { ...around, pair: 'value' } : null;
}

interface Site {
  readonly text: string;
  readonly at: number;
  readonly chunks: readonly Chunk[];
  readonly index: number;
}

/** Entries of a section are chunks of their own: what stands beside one is seen only from there. */
function inFile(
  { blank, ...found }: Around,
  { text, at, chunks, index }: Site,
  position: TextPosition,
): Caret {
  const { path, slot, flow, from, to } = found;
  const toLine = position.character - at;
  const word = text.slice(from, to).trimStart();
  const holds = !flow && (slot === 'key' || slot === 'open');
  const own = holds ? chunks.filter((chunk) => isChild(chunk, path)) : [];
  const others = own.filter(
    (chunk) => slot !== 'key' || chunk !== chunks[index] || chunk.path.at(-1) !== word,
  );
  const beside = new Set([...found.beside, ...others.map((chunk) => chunk.path.at(-1)!)]);
  const column = slot === 'open' && own[0] ? own[0].indent : found.column;
  const moves = blank && column !== position.character;
  return {
    ...found,
    line: position.line,
    from: moves ? 0 : from + toLine,
    to: to + toLine,
    colonEnd: found.colonEnd + toLine,
    word,
    typed: text.slice(from, at),
    before: moves ? ' '.repeat(column) : found.before,
    column,
    beside: [...beside],
  };
}

const isChild = ({ kind, path }: Chunk, of: Path): boolean =>
  kind !== 'loose' && path.length === of.length + 1 && of.every((key, step) => key === path[step]);

const samePath = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((key, step) => key === b[step]);
