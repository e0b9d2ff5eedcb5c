/** The first directory of a TIFF: how large its picture is, and whether all of it is there. */
import type { FileHandle } from 'node:fs/promises';
import type { ClipFacts } from '../../shared/clips/facts.ts';
import { later } from '../../shared/words/message.ts';
import { readAt } from './bytes.ts';
import { Unreadable } from './unreadable.ts';

const TAG = {
  kind: 254,
  width: 256,
  height: 257,
  strips: 273,
  stripBytes: 279,
  tiles: 324,
  tileBytes: 325,
} as const;

/** Bytes of a value by its type: SHORT, LONG and the 64-bit LONG8. */
const BYTES: Readonly<Record<number, number>> = { 3: 2, 4: 4, 16: 8 };
/** No picture has more tags than that. */
const MOST_TAGS = 4096;

interface Entry {
  readonly type: number;
  readonly count: number;
  /** Where its values are in the file. */
  readonly at: number;
}

/** How numbers are written: their order, and 4 or 8 bytes for offsets and counts. */
interface Layout {
  readonly isLittle: boolean;
  readonly isBig: boolean;
}

export async function tiffSize(file: FileHandle, bytes: number): Promise<ClipFacts['size']> {
  const head = await readAt(file, 0, 16);
  const isLittle = head.getUint8(0) === 0x49;
  const layout: Layout = { isLittle, isBig: head.getUint16(2, isLittle) === 43 };
  const first = wholeAt(head, layout.isBig ? 8 : 4, layout.isBig ? 8 : 4, layout);
  const entries = await directory(file, first, layout);
  const value = async (tag: number, index = 0): Promise<number | undefined> => {
    const entry = entries.get(tag);
    return entry && wholeOf(file, entry, index, layout);
  };
  // Bit 0: a smaller copy of another picture, which raw files have in front.
  if (((await value(TAG.kind)) ?? 0) % 2 === 1)
    throw new Unreadable(later`it is a raw picture, which has to be developed first`);
  const [width, height] = [await value(TAG.width), await value(TAG.height)];
  if (width === undefined || height === undefined)
    throw new Unreadable(later`its header is broken`);
  for (const [parts, sizes] of [
    [TAG.strips, TAG.stripBytes],
    [TAG.tiles, TAG.tileBytes],
  ] as const) {
    const last = (entries.get(parts)?.count ?? 0) - 1;
    const [start, size] = [await value(parts, last), await value(sizes, last)];
    if (last >= 0 && (start ?? 0) + (size ?? 0) > bytes)
      throw new Unreadable(later`it is cut off: its end is missing`);
  }
  return { width, height };
}

async function directory(
  file: FileHandle,
  at: number,
  layout: Layout,
): Promise<ReadonlyMap<number, Entry>> {
  const wide = layout.isBig ? 8 : 4;
  const counted = layout.isBig ? 8 : 2;
  const count = wholeAt(await readAt(file, at, counted), 0, counted, layout);
  if (count > MOST_TAGS) throw new Unreadable(later`its header is broken`);
  const each = 4 + 2 * wide;
  const view = await readAt(file, at + counted, count * each);
  if (view.byteLength < count * each)
    throw new Unreadable(later`it is cut off: its end is missing`);
  return new Map(
    Array.from({ length: count }, (_, index) => {
      const from = index * each;
      const type = view.getUint16(from + 2, layout.isLittle);
      const values = wholeAt(view, from + 4, wide, layout);
      const isInside = values * (BYTES[type] ?? wide + 1) <= wide;
      const place = isInside
        ? at + counted + from + 4 + wide
        : wholeAt(view, from + 4 + wide, wide, layout);
      return [view.getUint16(from, layout.isLittle), { type, count: values, at: place }];
    }),
  );
}

/** undefined: it has no such value, or one that is no whole number. */
async function wholeOf(
  file: FileHandle,
  { type, count, at }: Entry,
  index: number,
  layout: Layout,
): Promise<number | undefined> {
  const size = BYTES[type];
  if (size === undefined || index < 0 || index >= count) return undefined;
  return wholeAt(await readAt(file, at + index * size, size), 0, size, layout);
}

function wholeAt(view: DataView, at: number, size: number, { isLittle }: Layout): number {
  if (at + size > view.byteLength) throw new Unreadable(later`it is cut off: its end is missing`);
  switch (size) {
    case 2:
      return view.getUint16(at, isLittle);
    case 4:
      return view.getUint32(at, isLittle);
    default: {
      const whole = Number(view.getBigUint64(at, isLittle));
      if (!Number.isSafeInteger(whole)) throw new Unreadable(later`its header is broken`);
      return whole;
    }
  }
}
