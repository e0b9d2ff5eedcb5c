/** The parts of an MXF file (SMPTE ST 377-1): each a key of 16 bytes, a length and a value. */
import type { FileHandle } from 'node:fs/promises';
import { readAt } from '../bytes.ts';

const KEY = 16;
/** A length takes at most 1 + 8 bytes (ISO/IEC 8825-1, 8.1.3). */
const HEAD = KEY + 9;
/** Metadata of a recording is smaller; a longer one is made to fill the memory. */
const MOST_METADATA_BYTES = 1 << 24;
const MOST_PARTS = 100_000;

interface Part {
  /** In hexadecimal, without the version of its register. */
  readonly key: string;
  readonly start: number;
  readonly end: number;
}

/** Two digits each; the version, byte 7, says nothing of what it is. */
export function keyAt(view: DataView, at: number): string {
  let key = '';
  for (let index = 0; index < KEY; index++)
    key +=
      index === 7
        ? '__'
        : view
            .getUint8(at + index)
            .toString(16)
            .padStart(2, '0');
  return key;
}

function headAt(view: DataView, at: number): Omit<Part, 'end'> & { readonly length: number } {
  const first = view.getUint8(at + KEY);
  const key = keyAt(view, at);
  if (first < 0x80) return { key, start: at + KEY + 1, length: first };
  const count = first & 0x7f;
  let length = 0;
  for (let index = 1; index <= Math.min(count, 8); index++)
    length = length * 256 + view.getUint8(at + KEY + index);
  return { key, start: at + KEY + 1 + count, length };
}

/** @returns null where no part begins there */
export async function partAt(file: FileHandle, at: number): Promise<Part | null> {
  const view = await readAt(file, at, HEAD);
  if (view.byteLength < HEAD || view.getUint32(0) !== 0x060e2b34) return null;
  const { key, start, length } = headAt(view, 0);
  return { key, start: at + start, end: at + start + length };
}

/** A set of the metadata: its kind, and its values by their local tags. */
export interface MetadataSet {
  /** Byte 14 of its key. */
  readonly kind: number;
  readonly values: ReadonlyMap<number, DataView>;
}

const SET = /^060e2b34025301__0d01010101(?:01)(..)00$/;
const FILL = /^060e2b340101..__0301021001000000$/;

/** What stands before the metadata, to fill up a grid, and isn't counted with it. */
const FILLED = 1 << 16;

/** The sets that follow a partition's own part, as long as they are metadata. */
export async function metadataFrom(
  file: FileHandle,
  { start, end: at }: Part,
): Promise<readonly MetadataSet[]> {
  const partition = await readAt(file, start, 40);
  const length = partition.byteLength === 40 ? Number(partition.getBigUint64(32)) : 0;
  if (length === 0) return [];
  const view = await readAt(file, at, Math.min(MOST_METADATA_BYTES, length + FILLED));
  const sets: MetadataSet[] = [];
  for (let place = 0, count = 0; place + HEAD <= view.byteLength && count < MOST_PARTS; count++) {
    if (view.getUint32(place) !== 0x060e2b34) break;
    const { key, start, length } = headAt(view, place);
    const end = start + length;
    // The frames come after the metadata: what begins with them isn't read.
    if (end > view.byteLength || key.startsWith('060e2b34010201__0d010301')) break;
    const [, kind] = SET.exec(key) ?? [];
    if (kind !== undefined)
      sets.push({ kind: Number.parseInt(kind, 16), values: valuesIn(view, start, end) });
    else if (!FILL.test(key) && sets.length > 0 && key.startsWith('060e2b34020501')) break;
    place = end;
  }
  return sets;
}

function valuesIn(view: DataView, start: number, end: number): ReadonlyMap<number, DataView> {
  const values = new Map<number, DataView>();
  for (let at = start; at + 4 <= end; ) {
    const length = view.getUint16(at + 2);
    if (at + 4 + length > end) break;
    values.set(view.getUint16(at), new DataView(view.buffer, view.byteOffset + at + 4, length));
    at += 4 + length;
  }
  return values;
}
