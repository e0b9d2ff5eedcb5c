/** What the rules on time-lapses share: intervals that can be set, and an example to run. */
import { setTo } from '../plan/fixes.ts';
import type { PlanFix } from '../plan/problem.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import type { ShotSummary } from './plan-rule.ts';
import type { TakesOver } from './takes-over.ts';

/** For examples: three hours of the frost, a still every 20 s, with the checks that this needs. */
export const AT_INTERVALS: Readonly<Record<string, string | null>> = {
  'shots/frost/time-lapse': '{ interval: 20 s, duration: 3 h }',
  'shots/frost/record': null,
  'shots/frost/preflight':
    '{ aperture-held: open, light-steady: open, rig-at-room-temperature: open, room-left-alone: open, power-lasts: open }',
};

/** Whole seconds from 1 s up, tenths below: what intervalometers are set in. */
const step = (seconds: number): number => (seconds >= 1 ? 1 : 0.1);

/** The shortest interval that can be set and is at least as long. */
export const intervalUp = (seconds: number): number => roundTo(Math.ceil, seconds);

/** The longest interval that can be set and is at most as long; 0: there is none. */
export const intervalDown = (seconds: number): number => roundTo(Math.floor, seconds);

function roundTo(way: (value: number) => number, seconds: number): number {
  const unit = step(seconds);
  const slack = way === Math.ceil ? -1e-9 : 1e-9;
  return Number((way(seconds / unit + slack) * unit).toFixed(1));
}

export const printTime = (seconds: number): string =>
  seconds >= 7200 && seconds % 1800 === 0
    ? KINDS.time.print(seconds as Sec, 'h')
    : seconds >= 180 && seconds % 60 === 0
      ? KINDS.time.print(seconds as Sec, 'min')
      : KINDS.time.print(seconds as Sec, 's');

/** Where one time-lapse alone is more than a card: frames enough to fill it, and none beyond. */
export function fewerFrames(
  { shot, filled, each, holds }: TakesOver,
  shots: readonly ShotSummary[],
): readonly PlanFix[] {
  const lapse = shots.find((one) => one.shot === shot)?.takes?.timeLapse;
  if (filled !== null || lapse?.interval.state !== 'known') return [];
  const { interval, frames } = lapse;
  if (frames.state === 'known') {
    const count = Math.floor((frames.value * holds) / each);
    return count < 1
      ? []
      : [setTo(message`Take ${count} frames of ${shot}`, frames.at, String(count))];
  }
  const text = printTime(intervalUp((interval.value * each) / holds));
  return [
    setTo(
      message`Lengthen the interval of ${shot} to ${text}`,
      interval.at,
      text,
      message`fewer frames`,
    ),
  ];
}
