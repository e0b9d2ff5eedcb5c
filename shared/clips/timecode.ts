/** A timecode as it is written, as the count of frames that it stands for (SMPTE ST 12-1). */
import { type Rational, toNumber } from '../quantity/rational.ts';
import type { ClipTimecode } from './facts.ts';

/** Hours, minutes, seconds, frames; a semicolon says that numbers are left out. */
const WRITTEN = /^(\d\d):([0-5]\d):([0-5]\d)([:;])(\d\d)$/;

/**
 * @param rate of the frames that it counts
 * @returns null where it is none, or none of that rate
 */
export function writtenTimecode(text: string, rate: Rational): ClipTimecode | null {
  const found = WRITTEN.exec(text);
  const counted = Math.round(toNumber(rate));
  if (!found || counted === 0) return null;
  const [hours = 0, minutes = 0, seconds = 0, frames = 0] = [1, 2, 3, 5].map((one) =>
    Number(found[one]),
  );
  if (frames >= counted) return null;
  const dropFrame = found[4] === ';';
  const minutesInAll = 60 * hours + minutes;
  // Two numbers of 30 a minute, but in every tenth; four of 60.
  const dropped = dropFrame ? (counted / 15) * (minutesInAll - Math.floor(minutesInAll / 10)) : 0;
  const frame = (60 * minutesInAll + seconds) * counted + frames - dropped;
  return Number.isInteger(frame) ? { frame, rate, dropFrame } : null;
}
