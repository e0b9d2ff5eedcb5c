/** Stretches of time in seconds, days of the calendar, and how often a second something comes. */
import { later } from '../words/message.ts';
import type { Hertz, Range, Sec } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';
import type { Unit } from './unit.ts';
import { unitRange } from './unit-range.ts';
import { wordOr } from './word-or.ts';

/** Stretches of time, inside in seconds. */
const TIME_UNITS: readonly Unit[] = [
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

/** A part of a recording, from its start: `0 to 12 s`. */
export const timeRange: QuantityKind<Range<Sec>> = unitRange<Sec>({
  id: 'time-range',
  title: later`two times`,
  units: TIME_UNITS,
  examples: ['40 to 52 s', '0 to 1.5 min'],
  single: false,
  fromZero: true,
});

/** Days of the calendar as ISO 8601 writes them: 2027-03-02. Days that don't exist don't read. */
interface CalendarDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const LEAP_YEAR = '(?:[0-9]{2}(?:0[48]|[2468][048]|[13579][26])|(?:[02468][048]|[13579][26])00)';
const DATE = [
  '[0-9]{4}-(?:0[13578]|1[02])-(?:0[1-9]|[12][0-9]|3[01])',
  '[0-9]{4}-(?:0[469]|11)-(?:0[1-9]|[12][0-9]|30)',
  '[0-9]{4}-02-(?:0[1-9]|1[0-9]|2[0-8])',
  `${LEAP_YEAR}-02-29`,
].join('|');

const digits = (value: number, length: number): string => String(value).padStart(length, '0');

const printDate = ({ year, month, day }: CalendarDate): string =>
  `${digits(year, 4)}-${digits(month, 2)}-${digits(day, 2)}`;

/** Other orders and separators, only where they leave no doubt which is the month. */
function dateRepairs(text: string): string[] {
  const parts = text.split(/[-./]/).map((part) => part.trim());
  const [a = '', b = '', c = ''] = parts;
  if (parts.length !== 3) return [];
  if (a.length === 4) return [[a, b.padStart(2, '0'), c.padStart(2, '0')].join('-')];
  if (c.length !== 4) return [];
  const [day, month] = Number(b) > 12 ? [b, a] : [a, b];
  const clear = Number(a) > 12 || Number(b) > 12 || a === b || text.includes('.');
  return clear ? [[c, month.padStart(2, '0'), day.padStart(2, '0')].join('-')] : [];
}

export const date: QuantityKind<CalendarDate> = compoundKind<CalendarDate>({
  id: 'date',
  title: later`date`,
  units: [],
  examples: ['2027-03-02'],
  body: `(${DATE})`,
  read([text = '']) {
    const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
    return { value: { year, month, day }, usual: text };
  },
  likelyUnits: () => [],
  numbers: false,
  repairs: dateRepairs,
  print: printDate,
});

/** Frequency of the mains or of a lamp's own modulation, in hertz. */
export const frequency: QuantityKind<Hertz> = scalarKind<Hertz>({
  id: 'frequency',
  title: later`frequency`,
  sign: 'positive',
  units: [
    { usual: 'Hz', also: ['hz', 'HZ', 'hertz', 'Hertz'] },
    { usual: 'kHz', also: ['khz', 'KHz'], times: 1000 },
  ],
  examples: ['50 Hz', '25 kHz'],
});

export const modulation: QuantityKind<Hertz | 'none'> = wordOr(
  {
    id: 'modulation',
    title: later`frequency of modulation, or none`,
    words: { none: ['no'] },
    examples: ['none', '25 kHz'],
  },
  frequency,
);
