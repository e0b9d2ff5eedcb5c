/** Missing frames: places where the time between two frames is that of two or more. */
import type { ClipGap } from './facts.ts';

/** More gaps than this share of all frames, and the clip has no one rate. */
const MOST_GAPS = 0.1;
/** A frame may be off its place by this share of its length: containers round to milliseconds. */
const MOST_OFF = 0.25;

/**
 * @param starts of the frames, s, ascending
 * @param rate the rate that they were recorded at, frames a second
 * @returns null: the frames are not on the beat of that rate, or too many are missing
 */
export function gapsIn(starts: ArrayLike<number>, rate: number): readonly ClipGap[] | null {
  const gaps: ClipGap[] = [];
  const first = starts[0] ?? 0;
  for (let frame = 1; frame < starts.length; frame++) {
    const before = starts[frame - 1]!;
    const frames = (starts[frame]! - before) * rate;
    const whole = Math.round(frames);
    if (whole < 1 || Math.abs(frames - whole) > MOST_OFF) return null;
    if (whole === 1) continue;
    gaps.push({ frame, atS: before - first + 1 / rate, missing: whole - 1 });
    if (gaps.length > MOST_GAPS * starts.length) return null;
  }
  return gaps;
}
