/** Stretches of time, inside in seconds. */
import { later } from '../words/message.ts';
import type { Sec } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind, type Unit } from './scalar.ts';

export const TIME_UNITS: readonly Unit[] = [
  { usual: 's', also: ['sec', 'secs', 'second', 'seconds'] },
  { usual: 'ms', also: ['msec', 'millisecond', 'milliseconds'], over: 1000 },
  { usual: 'min', also: ['mins', 'minute', 'minutes'], times: 60 },
  { usual: 'h', also: ['hr', 'hrs', 'hour', 'hours'], times: 3600 },
];

const common = {
  units: TIME_UNITS,
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
