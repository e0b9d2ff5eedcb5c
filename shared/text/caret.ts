/** The context of a caret in a file: the mapping, list or value that is being written there. */
import { type Around, around } from '../syntax/around.ts';
import type { Outer } from '../syntax/syntax.ts';
import type { Path } from '../syntax/tree.ts';
import type { Chunk } from './chunk.ts';
import type { ChunkedText, TextPosition } from './chunked-text.ts';
import { isBelow, samePath } from './path.ts';

/** The surrounding structure, from the top of the file; offsets are those of the line. */
export interface Caret extends Around {
  readonly line: number;
  /** The text at the caret, and how much of it is before the caret. */
  readonly word: string;
  readonly typed: string;
}

/** null: within a comment or prose, or on something that the language has no word for. */
export function caretAt(text: ChunkedText, position: TextPosition): Caret | null {
  const { index, offset } = text.locate(position);
  const { chunks } = text;
  let first = index;
  while (first > 0 && chunks[first]!.kind === 'loose') first--;
  const before = chunks.slice(first, index).map((chunk) => chunk.text);
  const ahead = before.reduce((sum, one) => sum + one.length, 0);
  const behind = chunks.slice(index + 1).find(({ kind }) => kind !== 'loose');
  const source = before.join('') + chunks[index]!.text;
  // A byte order mark takes no column, and nothing is written before it.
  const mark = source.startsWith('\ufeff') ? 1 : 0;
  const at = ahead + offset - mark;
  if (at < 0) return null;
  const plain = source.slice(mark);
  const found = around(plain, at, outerOf(chunks, first), behind?.indent ?? 0);
  if (!found) return null;
  const { from, to, colonEnd } = found;
  const { line, character } = text.positionOf(index, offset);
  const start = at - character;
  const caret = {
    ...found,
    ...{ line, from: from - start, to: to - start, colonEnd: colonEnd - start },
    ...{ word: plain.slice(from, to).trimStart(), typed: plain.slice(from, at) },
  };
  const own = belowHeader(caret, chunks);
  return own && inFile(own, chunks, index, character);
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

/** A section's value is in the chunks after its own. */
function belowHeader(caret: Caret, chunks: readonly Chunk[]): Caret | null {
  const { path, slot, pair, word, flow } = caret;
  const isKey = slot === 'key' && pair === 'colon';
  if (flow || !(isKey || slot === 'value')) return caret;
  const section = isKey ? [...path, word] : path;
  if (!chunks.some((chunk) => isChild(chunk, section))) return caret;
  return isKey ? { ...caret, pair: 'value' } : null;
}

/**
 * Entries of a section are chunks of their own: the neighbours of one are seen only from the
 * section.
 */
function inFile(caret: Caret, chunks: readonly Chunk[], index: number, character: number): Caret {
  const { path, slot, flow, word, blank } = caret;
  const holds = !flow && (slot === 'key' || slot === 'open');
  const own = holds ? chunks.filter((chunk) => isChild(chunk, path)) : [];
  const others = own.filter(
    (chunk) => slot !== 'key' || chunk !== chunks[index] || chunk.path.at(-1) !== word,
  );
  const beside = new Set([...caret.beside, ...others.map((chunk) => chunk.path.at(-1)!)]);
  const column = slot === 'open' && own[0] ? own[0].indent : caret.column;
  const moved = blank && column !== character && { from: 0, before: ' '.repeat(column) };
  return { ...caret, column, ...moved, beside: [...beside] };
}

const isChild = ({ kind, path }: Chunk, of: Path): boolean =>
  kind !== 'loose' && path.length === of.length + 1 && isBelow(path, of);
