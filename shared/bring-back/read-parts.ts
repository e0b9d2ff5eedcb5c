/** What every text that comes back has: its first line, its limits, names and times. */
import { message } from '../words/message.ts';
import { lineOf } from './json-lines.ts';
import { Faults, NotReadable, type Reading, refuse } from './read-json.ts';
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

export type Unreadable = {
  readonly ok: false;
  /** For people: "takes[2].clip needs text, not 7", the first fault of each entry. */
  readonly whys: readonly string[];
};

/** More faults than this are counted. */
const MOST_FAULTS = 20;

/** Reads the JSON after the first line; each fault with its line, where the JSON has more than one. */
export function readDocument<T>(
  text: string,
  kind: 'day' | 'review',
  read: (value: unknown, faults: Faults) => T,
): { readonly ok: true; readonly made: T } | Unreadable {
  const faults = new Faults();
  const json = faults.tried(() => jsonAfterFirstLine(text, kind));
  const made = json && faults.tried(() => read(json.value, faults));
  if (made !== undefined && faults.all.length === 0) return { ok: true, made };
  const isOneLine = !json?.text.trim().includes('\n');
  const whys = faults.all.slice(0, MOST_FAULTS).map(({ message: why, where }) =>
    // The first line of the text is no part of the JSON.
    isOneLine || where === '' ? why : message`line ${lineOf(json?.text ?? '', where) + 1}: ${why}`,
  );
  const more = faults.all.length - whys.length;
  return { ok: false, whys: more > 0 ? [...whys, message`and ${more} more`] : whys };
}

/** Throws `NotReadable`. */
function jsonAfterFirstLine(text: string, kind: 'day' | 'review') {
  if (text.length > MOST_CHARACTERS)
    throw new NotReadable(
      message`it has ${text.length} characters; at most ${MOST_CHARACTERS} are read`,
    );
  const first = FIRST_LINE.exec(text);
  if (first?.[1] !== kind)
    throw new NotReadable(message`its first line is not "${`lamella ${kind} 1`}"`);
  if (Number(first[2]) !== 1)
    throw new NotReadable(message`it is of version ${first[2] ?? ''}; only version 1 can be read`);
  const json = text.slice(first[0].length);
  try {
    return { text: json, value: JSON.parse(json) as unknown };
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
