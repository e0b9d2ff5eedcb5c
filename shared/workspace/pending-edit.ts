/** An edit of a text before it is made, without what it leaves as it was. */
import type { Chunk } from '../text/chunk.ts';
import type { ChunkedText, ChunkOffset, TextRange } from '../text/chunked-text.ts';

export interface PendingEdit {
  /** All chunks that it touches. */
  readonly over: readonly Chunk[];
  /** The first of them, where it stands, and the offsets in it that the edit reaches. */
  readonly index: number;
  readonly chunk: Chunk;
  readonly from: number;
  readonly to: number;
  readonly removed: string;
  readonly added: string;
}

/** null: there is no text to make it in. */
export function pendingEdit(
  text: ChunkedText,
  range: TextRange,
  written: string,
): PendingEdit | null {
  const ends = [text.locate(range.start), text.locate(range.end)] as const;
  const [one, two] = isBehind(...ends) ? [ends[1], ends[0]] : ends;
  let over = text.chunks.slice(one.index, two.index + 1);
  let index = one.index;
  const whole = over.map((chunk) => chunk.text).join('');
  const end = whole.length - (over.at(-1)?.text.length ?? 0) + two.offset;
  const { head, tail } = inCommon(whole.slice(one.offset, end), written);
  let [from, to] = [one.offset + head, end - tail];
  const removed = whole.slice(from, to);
  const added = written.slice(head, written.length - tail);
  // What is the same before and after the edit may be whole chunks.
  let length = whole.length;
  for (let last = over.at(-1); last && over.length > 1 && to <= length - last.text.length; ) {
    length -= last.text.length;
    over = over.slice(0, -1);
    last = over.at(-1);
  }
  for (let first = over[0]; first && over.length > 1 && from >= first.text.length; ) {
    [from, to, index] = [from - first.text.length, to - first.text.length, index + 1];
    over = over.slice(1);
    [first] = over;
  }
  const [chunk] = over;
  return chunk ? { over, index, chunk, from, to, removed, added } : null;
}

const isBehind = (a: ChunkOffset, b: ChunkOffset): boolean =>
  a.index > b.index || (a.index === b.index && a.offset > b.offset);

/** How much two texts begin and end with alike: an editor may exchange more than it changes. */
function inCommon(a: string, b: string): { readonly head: number; readonly tail: number } {
  const most = Math.min(a.length, b.length);
  let head = 0;
  while (head < most && a[head] === b[head]) head++;
  let tail = 0;
  while (tail < most - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail++;
  return { head, tail };
}
