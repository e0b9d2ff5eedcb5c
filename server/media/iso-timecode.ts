/**
 * The timecode track of an MP4 or QuickTime file: description and sample by "QuickTime File Format
 * Specification", Timecode Media.
 */
import type { FileHandle } from 'node:fs/promises';
import type { ClipTimecode } from '../../shared/clips/facts.ts';
import { rational } from '../../shared/quantity/rational.ts';
import { readAt } from './bytes.ts';
import type { IsoTrack } from './iso-track.ts';

const DROPS = 0x1;
/** It counts something else than time. */
const COUNTS = 0x8;
const DESCRIPTION_BYTES = 16 + 18;

/**
 * @param video the track of the pictures
 * @param delayS nothing is shown for so long before its first frame
 */
export async function isoTimecode(
  file: FileHandle,
  tracks: readonly IsoTrack[],
  video: IsoTrack,
  delayS: number,
): Promise<ClipTimecode | null> {
  const own = tracks.filter(({ handler }) => handler === 'tmcd');
  const track = own.find(({ id }) => video.timecodes.includes(id)) ?? own[0];
  const description = track?.description;
  if (!track || !description || track.firstChunk === null) return null;
  if (description.byteLength < DESCRIPTION_BYTES + 8) return null;
  // Version and flags, how many there are, then the first: size, "tmcd", reserved, reference.
  const at = 8 + 16;
  const flags = description.getUint32(at + 4);
  const [timescale, length] = [description.getUint32(at + 8), description.getUint32(at + 12)];
  if (timescale === 0 || length === 0 || (flags & COUNTS) !== 0) return null;
  const sample = await readAt(file, track.firstChunk, 4);
  if (sample.byteLength < 4) return null;
  const rate = rational(timescale, length);
  const skipped = track.edits.find(({ mediaTime }) => mediaTime >= 0)?.mediaTime ?? 0;
  const skippedS = track.timescale > 0 ? skipped / track.timescale : 0;
  const frame = sample.getInt32(0) + Math.round(((delayS + skippedS) * timescale) / length);
  return { frame, rate, dropFrame: (flags & DROPS) !== 0 };
}
