/** Times of the day on a 24-hour clock, as ISO 8601 writes them without seconds: 09:30. */
import { later } from '../words/message.ts';
import type { Range, TimeOfDay } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { TO } from './unit-range.ts';

const HOUR = 3600;
const MINUTE = 60;

const two = (value: number): string => String(value).padStart(2, '0');

/** Whole minutes from midnight as hh:mm; what lies beyond the day begins again at 00:00. */
export function clock(seconds: number): string {
  const minutes = Math.round(seconds / MINUTE);
  const ofDay = ((minutes % 1440) + 1440) % 1440;
  return `${two(Math.floor(ofDay / 60))}:${two(ofDay % 60)}`;
}

/** "9.30", "9h30", "0930", "5 pm", "5:30 p.m." */
function repairs(text: string): string[] {
  const match =
    /^([0-9]{1,2})(?:[:.h ]{0,2}([0-5][0-9])(?::[0-9]{2})?)?\s*([ap])?\.?(?:m\.?)?h?$/i.exec(
      text.trim(),
    );
  if (!match) return [];
  const [, written = '', minutes = '00', half] = match;
  const hours = Number(written);
  if (half === undefined) return hours === 24 ? [`00:${minutes}`] : [`${written}:${minutes}`];
  if (hours < 1 || hours > 12) return [];
  return [`${two((hours % 12) + (half.toLowerCase() === 'p' ? 12 : 0))}:${minutes}`];
}

const BODY = '([01]?[0-9]|2[0-3]):([0-5][0-9])';

const inside = (hours = '', minutes = ''): TimeOfDay =>
  (Number(hours) * HOUR + Number(minutes) * MINUTE) as TimeOfDay;

/** Inside in seconds from midnight. */
export const timeOfDay: QuantityKind<TimeOfDay> = compoundKind<TimeOfDay>({
  id: 'time-of-day',
  title: later`time of day`,
  units: [],
  examples: ['09:00', '17:30'],
  body: BODY,
  read([hours, minutes]) {
    const value = inside(hours, minutes);
    return { value, usual: clock(value) };
  },
  likelyUnits: () => [],
  numbers: false,
  repairs,
  print: (value) => clock(value),
});

const printHours = ({ from, to }: Range<TimeOfDay>): string => `${clock(from)} to ${clock(to)}`;

/** From one time of the day to another, which may be after midnight. */
export const hours: QuantityKind<Range<TimeOfDay>> = compoundKind<Range<TimeOfDay>>({
  id: 'hours',
  title: later`two times of day`,
  units: [],
  examples: ['12:30 to 13:15', '23:30 to 00:15'],
  body: `${BODY}${TO}${BODY}`,
  read([fromHours, fromMinutes, toHours, toMinutes]) {
    const value = { from: inside(fromHours, fromMinutes), to: inside(toHours, toMinutes) };
    return { value, usual: printHours(value) };
  },
  likelyUnits: () => [],
  numbers: false,
  repairs: hourRepairs,
  print: printHours,
});

/** Each end as a single time is repaired. */
function hourRepairs(text: string): string[] {
  const ends = text.split(/\s*(?:to|-|\u2013|\.\.)\s*/i);
  const [from, to] = ends.map((end) => (timeOfDay.parse(end).ok ? end : repairs(end)[0]));
  return ends.length === 2 && from && to ? [`${from} to ${to}`] : [];
}
