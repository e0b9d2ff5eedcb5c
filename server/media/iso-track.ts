/** One track of an MP4 or QuickTime file: its tables, as far as they are needed (ISO/IEC 14496-12). */
import type { FileHandle } from 'node:fs/promises';
import { type Box, boxesIn, contentsOf } from './iso-boxes.ts';

/** Tables of a day's recording are smaller; a longer one is made to fill the memory. */
const MOST_TABLE_BYTES = 1 << 26;
const MOST_SMALL_BYTES = 1 << 20;
/** As many frames as ten hours of 120 fps have. */
const MOST_FRAMES = 4_320_000;

/** A line of the edit list. */
interface Edit {
  /** In ticks of the movie. */
  readonly duration: number;
  /** In ticks of the track; −1: nothing is shown. */
  readonly mediaTime: number;
}

export interface IsoTrack {
  readonly id: number;
  /** "vide", "soun", "tmcd" */
  readonly handler: string;
  /** Ticks a second. */
  readonly timescale: number;
  readonly edits: readonly Edit[];
  /** Tracks of timecode that belong to it. */
  readonly timecodes: readonly number[];
  /** Sample description; null: it is missing. */
  readonly description: DataView | null;
  /** Where its samples begin: of the first chunk, bytes; null: there is none. */
  readonly firstChunk: number | null;
  readonly boxes: ReadonlyMap<string, Box>;
}

/** @param trak what is inside the box of a track */
export async function isoTrack(file: FileHandle, trak: Box): Promise<IsoTrack> {
  const boxes = new Map<string, Box>();
  const WITHIN = new Set(['mdia', 'minf', 'stbl', 'edts', 'tref']);
  const gather = async ({ start, end }: Box): Promise<void> => {
    for await (const box of boxesIn(file, start, end)) {
      if (WITHIN.has(box.type)) await gather(box);
      // A second of its kind is none of the track's own: a handler of data, for one.
      else if (!boxes.has(box.type) && box.end <= trak.end) boxes.set(box.type, box);
    }
  };
  await gather(trak);
  const read = async (type: string, most = MOST_SMALL_BYTES): Promise<DataView | null> => {
    const box = boxes.get(type);
    return box ? contentsOf(file, box, most) : null;
  };
  const [tkhd, mdhd, hdlr] = [await read('tkhd'), await read('mdhd'), await read('hdlr')];
  const timecodes = await read('tmcd');
  return {
    id: tkhd ? wordAt(tkhd, isLong(tkhd) ? 20 : 12) : 0,
    timescale: mdhd ? wordAt(mdhd, isLong(mdhd) ? 20 : 12) : 0,
    handler: hdlr && hdlr.byteLength >= 12 ? latin(hdlr, 8, 4) : '',
    edits: editsIn(await read('elst')),
    timecodes: timecodes
      ? Array.from({ length: timecodes.byteLength >> 2 }, (_, index) =>
          wordAt(timecodes, index * 4),
        )
      : [],
    description: await read('stsd'),
    firstChunk: firstChunk(
      await read('stco', MOST_TABLE_BYTES),
      await read('co64', MOST_TABLE_BYTES),
    ),
    boxes,
  };
}

const isLong = (view: DataView): boolean => view.byteLength > 0 && view.getUint8(0) === 1;
const wordAt = (view: DataView, at: number): number =>
  at + 4 <= view.byteLength ? view.getUint32(at) : 0;
const latin = (view: DataView, at: number, length: number): string =>
  String.fromCharCode(...Array.from({ length }, (_, index) => view.getUint8(at + index)));

function editsIn(elst: DataView | null): readonly Edit[] {
  if (!elst || elst.byteLength < 8) return [];
  const long = isLong(elst);
  const length = long ? 20 : 12;
  const count = Math.min(elst.getUint32(4), Math.floor((elst.byteLength - 8) / length));
  return Array.from({ length: count }, (_, index) => {
    const at = 8 + index * length;
    return long
      ? { duration: Number(elst.getBigUint64(at)), mediaTime: Number(elst.getBigInt64(at + 8)) }
      : { duration: elst.getUint32(at), mediaTime: elst.getInt32(at + 4) };
  });
}

function firstChunk(stco: DataView | null, co64: DataView | null): number | null {
  if (stco && stco.byteLength >= 12 && stco.getUint32(4) > 0) return stco.getUint32(8);
  if (co64 && co64.byteLength >= 16 && co64.getUint32(4) > 0) return Number(co64.getBigUint64(8));
  return null;
}

/** The frames of a track by the time that they are shown, in ticks, and the end of the last. */
export interface FrameTimes {
  readonly starts: Float64Array;
  readonly end: number;
}

/** null: the track has no such table, as one in fragments, or one that can't be. */
export async function frameTimes(
  file: FileHandle,
  { boxes }: IsoTrack,
): Promise<FrameTimes | null> {
  const [at, offsetAt] = [boxes.get('stts'), boxes.get('ctts')];
  const stts = at ? await contentsOf(file, at, MOST_TABLE_BYTES) : null;
  const ctts = offsetAt ? await contentsOf(file, offsetAt, MOST_TABLE_BYTES) : null;
  if (!stts) return null;
  const runs = runsIn(stts);
  const total = runs.reduce((sum, [count]) => sum + count, 0);
  if (total === 0 || total > MOST_FRAMES) return null;
  const starts = new Float64Array(total);
  let [index, time, lastLength] = [0, 0, 0];
  for (const [count, length] of runs)
    for (let one = 0; one < count; one++, time += length, lastLength = length)
      starts[index++] = time;
  if (ctts) {
    index = 0;
    // Signed in version 1; writers of version 0 leave signed values too.
    for (const [count, offset] of runsIn(ctts))
      for (let one = 0; one < count && index < total; one++) starts[index++]! += offset | 0;
    starts.sort();
  }
  return { starts, end: starts[total - 1]! + lastLength };
}

/** "So many samples, each with this." */
function runsIn(view: DataView): readonly (readonly [count: number, value: number])[] {
  if (view.byteLength < 8) return [];
  const count = Math.min(view.getUint32(4), (view.byteLength - 8) >> 3);
  return Array.from(
    { length: count },
    (_, index) => [view.getUint32(8 + index * 8), view.getUint32(12 + index * 8)] as const,
  );
}
