/** What the timeline of an edit counts in, in words. */
import { message } from '../words/message.ts';
import { significant } from './say.ts';

/** Seconds to the hundredth: a frame is 0.04 s. */
export const secondsWords = (seconds: number): string => `${Number(seconds.toFixed(2))} s`;

export const framesWords = (count: number): string =>
  count === 1 ? message`${count} frame` : message`${count} frames`;

/** "50 %", "100 to 25 %" */
export function speedWords(speed: readonly [from: number, to: number] | null): string {
  if (!speed) return message`unknown`;
  const percent = (share: number): string => significant(share * 100, 3);
  const [from, to] = [percent(speed[0]), percent(speed[1])];
  return from === to ? `${to}%` : message`${from} to ${to}%`;
}

/** Above this many times real time, times say more than per cent. */
const MOST_PERCENT = 10;

/** "21%", "100 to 21%", "500x" of real time. */
export function realSpeedWords(speed: readonly [from: number, to: number]): string {
  if (Math.max(...speed) < MOST_PERCENT) return speedWords(speed);
  const [from, to] = speed.map((times) => `${significant(times, 3)}x`) as [string, string];
  return from === to ? to : message`${from} to ${to}`;
}
