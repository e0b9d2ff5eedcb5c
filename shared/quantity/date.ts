/** Days of the calendar as ISO 8601 writes them: 2027-03-02. Days that don't exist don't read. */
import { later } from '../words/message.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';

export interface CalendarDate {
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

const print = ({ year, month, day }: CalendarDate): string =>
  `${digits(year, 4)}-${digits(month, 2)}-${digits(day, 2)}`;

/** Other orders and separators, only where they leave no doubt which is the month. */
function repairs(text: string): string[] {
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
  repairs,
  print,
});
