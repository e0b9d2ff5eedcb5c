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

/**
 * The timecode of frame `frame` (a whole number from 0), "00:00:12:05", "00:01:00;02"; it starts
 * again after 24 hours. Undefined where the rate has none.
 */
export function timecode(frame: number, rate: Rational): string | undefined {
  const nominal = nominalRate(rate);
  if (nominal === undefined) return undefined;
  const dropped = droppedPerMinute(rate);
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
