/**
 * What the library doesn't say of MP4 and QuickTime files: when they were made, and whether they end
 * where their boxes do. Boxes by ISO/IEC 14496-12.
 */
import type { FileHandle } from 'node:fs/promises';
import { codeAt, readAt } from './bytes.ts';

/** Seconds from the start of 1904, from which these files count, to that of 1970. */
const FROM_1904_S = 2_082_844_800;
/** More boxes than that no recording has at the top: it is no such file, or made to keep us busy. */
const MOST_BOXES = 10_000;
const HEADER = 16;

interface Box {
  readonly type: string;
  /** Of what is inside. */
  readonly start: number;
  readonly end: number;
}

async function* boxesIn(file: FileHandle, start: number, end: number): AsyncGenerator<Box> {
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

interface IsoMediaFacts {
  /** ISO 8601; null: the file doesn't say. */
  readonly created: string | null;
  /** Its last box goes past the end of the file. */
  readonly isCutOff: boolean;
  /** The index of its frames is there. */
  readonly hasIndex: boolean;
}

export async function isoMediaFacts(file: FileHandle, bytes: number): Promise<IsoMediaFacts> {
  let created: string | null = null;
  let isCutOff = false;
  let hasIndex = false;
  for await (const box of boxesIn(file, 0, bytes)) {
    if (box.end > bytes) isCutOff = true;
    if (box.type !== 'moov') continue;
    hasIndex = box.end <= bytes;
    for await (const inner of boxesIn(file, box.start, Math.min(box.end, bytes)))
      if (inner.type === 'mvhd') created = await createdIn(file, inner.start);
  }
  return { created, isCutOff, hasIndex };
}

/** The movie header: version, flags, then when it was made. */
async function createdIn(file: FileHandle, at: number): Promise<string | null> {
  const header = await readAt(file, at, 12);
  if (header.byteLength < 12) return null;
  const isLong = header.getUint8(0) === 1;
  const seconds = isLong ? Number(header.getBigUint64(4)) : header.getUint32(4);
  // Writers without a clock leave 0.
  if (seconds <= FROM_1904_S) return null;
  const date = new Date((seconds - FROM_1904_S) * 1000);
  return Number.isNaN(date.getTime()) ? null : date.toISOString().replace('.000Z', 'Z');
}
