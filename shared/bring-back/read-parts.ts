/** What every text that comes back has: its first line, its limits, names and times. */
import { message } from '../words/message.ts';
import { NotReadable, type Reading, refuse } from './read-json.ts';
import { usualText } from './value.ts';

/** Characters of the whole text. A day of 1000 takes with remarks is a quarter of it. */
export const MOST_CHARACTERS = 1_000_000;
export const MOST_ENTRIES = 1000;
export const LONGEST_NAME = 64;
export const LONGEST_VALUE = 80;
export const LONGEST_PATH = 400;
export const LONGEST_NOTE = 2000;

const FIRST_LINE = /^\ufeff?lamella (day|review) ([0-9]{1,9})[ \t]*\r?\n/;
export const NAME = /^[a-z][a-z0-9-]{0,63}$/;
export const TIME =
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,9})?)?(?:Z|[+-](?:[01]\d|2[0-3]):?[0-5]\d)?$/;

/** What the first line says that it is; null: nothing known. */
export function kindOfText(text: string): 'day' | 'review' | null {
  const kind = FIRST_LINE.exec(text)?.[1];
  return kind === 'day' || kind === 'review' ? kind : null;
}

/** The JSON after the first line. Throws `NotReadable`. */
export function documentOf(text: string, kind: 'day' | 'review'): unknown {
  if (text.length > MOST_CHARACTERS)
    throw new NotReadable(
      message`it has ${text.length} characters; at most ${MOST_CHARACTERS} are read`,
    );
  const first = FIRST_LINE.exec(text);
  if (first?.[1] !== kind)
    throw new NotReadable(message`its first line is not "${`lamella ${kind} 1`}"`);
  if (Number(first[2]) !== 1)
    throw new NotReadable(message`it is of version ${first[2] ?? ''}; only version 1 can be read`);
  try {
    return JSON.parse(text.slice(first[0].length));
  } catch {
    // The parser's own words name places in a text that nobody looks at.
    throw new NotReadable(message`what follows its first line is not JSON, or it is cut off`);
  }
}

export function timeOf(entry: Reading, key: string): string {
  const text = entry.text(key, LONGEST_VALUE);
  return TIME.test(text) && isDay(text)
    ? text
    : refuse(entry.at(key), message`a date and time like 2027-03-02T10:41:07Z`, text);
}

/** Whether the date exists. */
export const isDay = (text: string): boolean => usualText('date', text.slice(0, 10)) !== undefined;

export function nameOf(entry: Reading, key: string): string {
  const text = entry.text(key, LONGEST_NAME);
  return NAME.test(text) ? text : refuse(entry.at(key), message`a name of the plan`, text);
}
