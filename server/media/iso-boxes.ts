/** The boxes that MP4 and QuickTime files consist of, by ISO/IEC 14496-12, 4.2. */
import type { FileHandle } from 'node:fs/promises';
import { codeAt, readAt } from './bytes.ts';

/** More boxes than that no recording has at one place: it is no such file, or made to keep us busy. */
const MOST_BOXES = 10_000;
const HEADER = 16;

export interface Box {
  readonly type: string;
  /** Of what is inside. */
  readonly start: number;
  readonly end: number;
}

export async function* boxesIn(file: FileHandle, start: number, end: number): AsyncGenerator<Box> {
  let at = start;
  for (let count = 0; at + 8 <= end && count < MOST_BOXES; count++) {
    const header = await readAt(file, at, HEADER);
    if (header.byteLength < 8) return;
    const short = header.getUint32(0);
    const isLong = short === 1;
    if (isLong && header.byteLength < HEADER) return;
    const size = isLong ? Number(header.getBigUint64(8)) : short === 0 ? end - at : short;
    const head = isLong ? HEADER : 8;
    if (size < head) return;
    yield { type: codeAt(header, 4), start: at + head, end: at + size };
    at += size;
  }
}

/** Those inside bytes that were read already; none goes past their end. */
export function* boxesOf(view: DataView, start = 0): Generator<Box> {
  for (let at = start; at + 8 <= view.byteLength; ) {
    const size = view.getUint32(at);
    if (size < 8 || at + size > view.byteLength) return;
    yield { type: codeAt(view, at + 4), start: at + 8, end: at + size };
    at += size;
  }
}

/** The contents of one box, unless they are longer than such a box is. */
export async function contentsOf(
  file: FileHandle,
  { start, end }: Box,
  most: number,
): Promise<DataView | null> {
  if (end - start > most) return null;
  const view = await readAt(file, start, end - start);
  return view.byteLength === end - start ? view : null;
}
