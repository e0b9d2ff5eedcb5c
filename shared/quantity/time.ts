/** Stretches of time, inside in seconds. */
import { later } from '../words/message.ts';
import type { Sec } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { significant } from './number.ts';
import { scalarKind, type Unit } from './scalar.ts';

export const TIME_UNITS: readonly Unit[] = [
  { usual: 's', also: ['sec', 'secs', 'second', 'seconds'] },
  { usual: 'ms', also: ['msec', 'millisecond', 'milliseconds'], over: 1000 },
  { usual: 'min', also: ['mins', 'minute', 'minutes'], times: 60 },
  { usual: 'h', also: ['hr', 'hrs', 'hour', 'hours'], times: 3600 },
];

/** In ms under 0.1 s, min from 2 min, h from 2 h. */
export function displayTime(seconds: number): string {
  const size = Math.abs(seconds);
  if (!Number.isFinite(seconds)) return significant(seconds);
  if (size > 0 && size < 0.1) return `${significant(seconds * 1000)} ms`;
  if (size >= 7200) return `${significant(seconds / 3600)} h`;
  if (size >= 120) return `${significant(seconds / 60)} min`;
  return `${significant(seconds)} s`;
}

const common = {
  units: TIME_UNITS,
  display: displayTime,
  likelyUnits: () => ['s', 'min', 'ms'],
};

export const time: QuantityKind<Sec> = scalarKind<Sec>({
  ...common,
  id: 'time',
  title: later`time`,
  sign: 'positive',
  examples: ['60 s', '18 ms', '2 min'],
});

export const timeOrZero: QuantityKind<Sec> = scalarKind<Sec>({
  ...common,
  id: 'time-or-zero',
  title: later`time or 0 s`,
  sign: 'zero-up',
  examples: ['0.4 s', '0 s'],
});
