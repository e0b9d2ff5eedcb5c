/**
 * SMPTE ST 12-1 timecode of a frame. At 30000/1001 and 60000/1001 frames per second the count
 * drops frame numbers 0 and 1 (0 to 3 at 60) at the start of every minute that ten does not
 * divide, so that it keeps time to 2.6 frames a day; no picture is dropped. A semicolon before the
 * frames says so. At 24000/1001 nothing is dropped (the standard knows none) and the count runs
 * 3.6 s an hour behind the clock.
 */
import type { Rational } from '../quantity/rational.ts';

/** Counts by the standard: 24, 25 and 30, and their doubles counted through. */
const NOMINAL = new Set([24, 25, 30, 48, 50, 60]);
/** Of these some also run at 1000/1001. */
const SLOWED = new Set([24, 30, 48, 60]);

/** How many frame numbers are counted a second; undefined for a rate that has no timecode. */
function nominalRate({ n, d }: Rational): number | undefined {
  const slowed = d === 1001;
  if (d !== 1 && !slowed) return undefined;
  const nominal = slowed ? n / 1000 : n;
  return (slowed ? SLOWED : NOMINAL).has(nominal) ? nominal : undefined;
}

/** Frame numbers dropped a minute at a rate. */
const droppedPerMinute = (rate: Rational): number => {
  const nominal = rate.d === 1001 ? nominalRate(rate) : undefined;
  return nominal !== undefined && nominal % 30 === 0 ? nominal / 15 : 0;
};

/** Whether its timecode drops frame numbers, where nothing says otherwise. */
export const dropsFrames = (rate: Rational): boolean => droppedPerMinute(rate) > 0;

const TIMECODE = /^(\d{2}):(\d{2}):(\d{2})([:;.])(\d{2,3})$/;

interface ReadTimecode {
  readonly frame: number;
  readonly isDrop: boolean;
}

/**
 * The frame that a timecode stands for, from 00:00:00:00. A semicolon or a point before the frames
 * drops frame numbers, a colon doesn't. Undefined: no timecode, one that the rate doesn't count, or a
 * number that is dropped.
 */
export function readTimecode(text: string, rate: Rational): ReadTimecode | undefined {
  const nominal = nominalRate(rate);
  const read = TIMECODE.exec(text);
  if (nominal === undefined || !read) return undefined;
  const isDrop = read[4] !== ':';
  const dropped = isDrop ? droppedPerMinute(rate) : 0;
  if (isDrop && dropped === 0) return undefined;
  const [hours, minutes, seconds, frames] = [1, 2, 3, 5].map((part) => Number(read[part])) as [
    number,
    number,
    number,
    number,
  ];
  if (hours > 23 || minutes > 59 || seconds > 59 || frames >= nominal) return undefined;
  if (minutes % 10 !== 0 && seconds === 0 && frames < dropped) return undefined;
  const inMinutes = 60 * hours + minutes;
  const shown = nominal * (60 * inMinutes + seconds) + frames;
  return { frame: shown - dropped * (inMinutes - Math.floor(inMinutes / 10)), isDrop };
}

/** A timecode as a count of frames from 00:00:00:00, with none left out. */
export interface Count {
  readonly frame: number;
  readonly rate: Rational;
  readonly dropFrame: boolean;
}

/**
 * The frame that a count at another rate calls by the same hours, minutes and seconds: a clip keeps
 * its label where its frames are counted anew. Undefined where either rate has no timecode.
 */
export function sameLabel(count: Count, rate: Rational, isDrop: boolean): number | undefined {
  const label = timecode(count.frame, count.rate, count.dropFrame);
  const [from, to] = [nominalRate(count.rate), nominalRate(rate)];
  if (label === undefined || from === undefined || to === undefined) return undefined;
  const mark = isDrop && droppedPerMinute(rate) > 0 ? ';' : ':';
  // A number that is dropped begins at the next one that is counted.
  for (let frames = Math.floor((Number(label.slice(9)) * to) / from); frames < to; frames++) {
    const text = `${label.slice(0, 8)}${mark}${String(frames).padStart(2, '0')}`;
    const read = readTimecode(text, rate);
    if (read) return read.frame;
  }
  return undefined;
}

/**
 * The timecode of frame `frame` (a whole number from 0), "00:00:12:05", "00:01:00;02"; it starts
 * again after 24 hours. Undefined where the rate has none.
 * @param isDrop left out: as is usual at the rate; at 30000/1001 both are in use
 */
export function timecode(
  frame: number,
  rate: Rational,
  isDrop = dropsFrames(rate),
): string | undefined {
  const nominal = nominalRate(rate);
  if (nominal === undefined) return undefined;
  const dropped = isDrop ? droppedPerMinute(rate) : 0;
  const perDay = 24 * 6 * (600 * nominal - 9 * dropped);
  const shown = numbered(((frame % perDay) + perDay) % perDay, nominal, dropped);
  const pair = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  const seconds = Math.floor(shown / nominal);
  const mark = dropped > 0 ? ';' : ':';
  return `${pair(seconds / 3600)}:${pair((seconds / 60) % 60)}:${pair(seconds % 60)}${mark}${pair(shown % nominal)}`;
}

/** The number that a frame has once the dropped ones are counted too. */
function numbered(frame: number, nominal: number, dropped: number): number {
  if (dropped === 0) return frame;
  const perMinute = 60 * nominal - dropped;
  const perTen = 10 * perMinute + dropped;
  const tens = Math.floor(frame / perTen);
  const rest = frame % perTen;
  // The first of ten minutes drops nothing and is longer by what the others drop.
  const minutes = rest < 60 * nominal ? 0 : Math.floor((rest - 60 * nominal) / perMinute) + 1;
  return frame + dropped * (9 * tens + minutes);
}
