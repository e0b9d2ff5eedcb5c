/**
 * What the library doesn't say of MP4 and QuickTime files: when they were made, whether they end
 * where their boxes do, which of their frames are shown, and from which timecode on. Boxes by
 * ISO/IEC 14496-12.
 */
import type { FileHandle } from 'node:fs/promises';
import type { ClipEdit, ClipTimecode } from '../../shared/clips/facts.ts';
import { readAt } from './bytes.ts';
import { boxesIn } from './iso-boxes.ts';
import { isoTimecode } from './iso-timecode.ts';
import { type FrameTimes, frameTimes, type IsoTrack, isoTrack } from './iso-track.ts';

/** Seconds from the start of 1904, from which these files count, to that of 1970. */
const FROM_1904_S = 2_082_844_800;
/** More tracks than that no recording has. */
const MOST_TRACKS = 64;

interface IsoMediaFacts {
  /** ISO 8601; null: the file doesn't say. */
  readonly created: string | null;
  /** Its last box goes past the end of the file. */
  readonly isCutOff: boolean;
  /** The index of its frames is there. */
  readonly hasIndex: boolean;
  /** Of the first track of pictures; null: there is none. */
  readonly video: IsoVideo | null;
}

export interface IsoVideo {
  readonly track: IsoTrack;
  /** null: in fragments, so that there is no table. */
  readonly times: FrameTimes | null;
  readonly edit: ClipEdit | null;
  readonly timecode: ClipTimecode | null;
}

export async function isoMediaFacts(file: FileHandle, bytes: number): Promise<IsoMediaFacts> {
  let [created, isCutOff, hasIndex, movieTimescale]: [string | null, boolean, boolean, number] = [
    null,
    false,
    false,
    0,
  ];
  const tracks: IsoTrack[] = [];
  for await (const box of boxesIn(file, 0, bytes)) {
    if (box.end > bytes) isCutOff = true;
    if (box.type !== 'moov') continue;
    hasIndex = box.end <= bytes;
    for await (const inner of boxesIn(file, box.start, Math.min(box.end, bytes))) {
      if (inner.type === 'mvhd')
        ({ created, timescale: movieTimescale } = await movieHeader(file, inner.start));
      if (inner.type === 'trak' && inner.end <= bytes && tracks.length < MOST_TRACKS)
        tracks.push(await isoTrack(file, inner));
    }
  }
  return { created, isCutOff, hasIndex, video: await videoOf(file, tracks, movieTimescale) };
}

async function videoOf(
  file: FileHandle,
  tracks: readonly IsoTrack[],
  movieTimescale: number,
): Promise<IsoVideo | null> {
  const track = tracks.find(({ handler }) => handler === 'vide');
  if (!track) return null;
  const times = await frameTimes(file, track);
  const edit = editOf(track, times, movieTimescale);
  const timecode = await isoTimecode(file, tracks, track, edit?.emptyS ?? 0);
  return { track, times, edit, timecode };
}

/**
 * null: every frame is shown. A list may start later only because the frames come in another order
 * than they are shown, and may end by the rounding of its own ticks: neither leaves out a frame.
 */
function editOf(
  { edits, timescale }: IsoTrack,
  times: FrameTimes | null,
  movieTimescale: number,
): ClipEdit | null {
  if (!times || timescale === 0 || movieTimescale === 0) return null;
  const shown = edits.filter(({ mediaTime }) => mediaTime >= 0);
  const [first] = shown;
  if (!first) return null;
  const tick = timescale / movieTimescale;
  const emptyTicks = edits
    .slice(0, edits.indexOf(first))
    .reduce((sum, { duration }) => sum + duration, 0);
  const from = Math.min(...shown.map(({ mediaTime }) => mediaTime));
  // A length of 0 is one to the end, as writers in fragments leave it.
  const ends = shown.map(({ mediaTime, duration }) =>
    duration === 0 ? times.end : Math.min(times.end, mediaTime + duration * tick),
  );
  const to = Math.max(...ends);
  const slack = Math.max(1, tick);
  const skippedFrames = times.starts.filter((start) => start < from - slack).length;
  const leftFrames = times.starts.filter((start) => start > to - slack).length;
  const emptyS = emptyTicks / movieTimescale;
  const pieces = shown.length;
  if (skippedFrames === 0 && leftFrames === 0 && emptyS === 0 && pieces === 1) return null;
  const shownTicks = shown.reduce(
    (sum, { mediaTime }, index) => sum + Math.max(0, ends[index]! - mediaTime),
    0,
  );
  return { skippedFrames, leftFrames, shownS: shownTicks / timescale, emptyS, pieces };
}

/** The movie header: version, flags, when it was made, when changed, and its ticks a second. */
async function movieHeader(
  file: FileHandle,
  at: number,
): Promise<{ readonly created: string | null; readonly timescale: number }> {
  const header = await readAt(file, at, 28);
  if (header.byteLength < 28) return { created: null, timescale: 0 };
  const isLong = header.getUint8(0) === 1;
  const timescale = header.getUint32(isLong ? 20 : 12);
  const seconds = isLong ? Number(header.getBigUint64(4)) : header.getUint32(4);
  // Writers without a clock leave 0.
  if (seconds <= FROM_1904_S) return { created: null, timescale };
  const date = new Date((seconds - FROM_1904_S) * 1000);
  const isDate = !Number.isNaN(date.getTime());
  return { created: isDate ? date.toISOString().replace('.000Z', 'Z') : null, timescale };
}
