/** Reads the text that a filled-in sheet gives. It may come from anybody. */
import type { QuantityId } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import {
  type Day,
  type DayCheck,
  type DayMeasurement,
  type DayTake,
  MEASURED_KINDS,
  SETTING_KINDS,
} from './day.ts';
import { NotReadable, Reading, refuse, textOf, type Where } from './read-json.ts';
import {
  documentOf,
  LONGEST_NAME,
  LONGEST_NOTE,
  LONGEST_PATH,
  LONGEST_VALUE,
  MOST_ENTRIES,
  NAME,
  nameOf,
  timeOf,
} from './read-parts.ts';
import { usualText } from './value.ts';

const MOST_PARTS = 32;
const MOST_TAKES = 9999;

type ReadDay =
  | { readonly ok: true; readonly day: Day }
  | {
      readonly ok: false;
      /** For people: "takes[2].clip needs text, not 7". */
      readonly why: string;
    };

export function readDay(text: string): ReadDay {
  try {
    return { ok: true, day: dayOf(documentOf(text, 'day')) };
  } catch (cause) {
    if (cause instanceof NotReadable) return { ok: false, why: cause.message };
    throw cause;
  }
}

function dayOf(value: unknown): Day {
  const top = new Reading(value, '');
  const unknown: Where[] = [];
  const each = <T>(key: string, read: (entry: Reading) => T): T[] =>
    top.list(key, MOST_ENTRIES).map((one, index) => {
      const entry = new Reading(one, `${key}[${index + 1}]`);
      const made = read(entry);
      unknown.push(...entry.unknown());
      return made;
    });
  const day = {
    plan: top.text('plan', LONGEST_PATH),
    saved: timeOf(top, 'saved'),
    checks: each('checks', checkOf),
    takes: each('takes', (entry) => takeOf(entry, unknown)),
    measurements: each('measurements', (entry) => measurementOf(entry, unknown)),
  };
  unknown.push(...top.unknown());
  refuseTwice(day.takes);
  return { ...day, unknown };
}

function checkOf(entry: Reading): DayCheck {
  const done = entry.get('done');
  if (typeof done !== 'boolean') refuse(entry.at('done'), message`true or false`, done);
  const shot = entry.get('shot') ?? null;
  return {
    shot: shot === null ? null : nameOf(entry, 'shot'),
    check: nameOf(entry, 'check'),
    done: done as boolean,
    at: timeOf(entry, 'at'),
    by: entry.maybeText('by', LONGEST_VALUE),
  };
}

function takeOf(entry: Reading, unknown: Where[]): DayTake {
  const take = entry.get('take');
  if (!Number.isInteger(take) || (take as number) < 1 || (take as number) > MOST_TAKES)
    refuse(entry.at('take'), message`a number from 1 to ${MOST_TAKES}`, take);
  const keep = entry.get('keep') ?? null;
  if (keep !== null && typeof keep !== 'boolean')
    refuse(entry.at('keep'), message`true, false or null`, keep);
  const used = entry.maybeText('used', LONGEST_VALUE);
  const set = entry.get('set') ?? {};
  const settings = new Reading(set, entry.at('set'));
  const made = {
    shot: nameOf(entry, 'shot'),
    take: take as number,
    at: timeOf(entry, 'at'),
    clip: entry.maybeText('clip', LONGEST_PATH),
    keep: keep as boolean | null,
    note: entry.maybeText('note', LONGEST_NOTE),
    set: valuesOf(settings, SETTING_KINDS),
    used: used === null ? null : quantity(used, entry.at('used'), 'time-range'),
  };
  unknown.push(...settings.unknown());
  return made;
}

function measurementOf(entry: Reading, unknown: Where[]): DayMeasurement {
  const row = new Reading(entry.get('row'), entry.at('row'));
  const parts = row.list('with', MOST_PARTS).map((part, index) => {
    const where = `${row.at('with')}[${index + 1}]`;
    const text = textOf(part, where, LONGEST_NAME);
    return NAME.test(text) ? text : refuse(where, message`a name of the plan`, text);
  });
  const made = {
    lens: nameOf(entry, 'lens'),
    parts,
    ring: quantity(row.text('ring', LONGEST_VALUE), row.at('ring'), 'ring'),
    values: valuesOf(row, MEASURED_KINDS),
  };
  unknown.push(...row.unknown());
  return made;
}

/** The values of an object whose keys have kinds; those that are left empty are left out. */
function valuesOf<K extends string>(
  entry: Reading,
  kinds: Readonly<Record<K, QuantityId>>,
): ReadonlyMap<K, string> {
  const values = new Map<K, string>();
  for (const key of Object.keys(kinds) as K[]) {
    const given = entry.get(key);
    const text = typeof given === 'number' ? String(given) : entry.maybeText(key, LONGEST_VALUE);
    if (text !== null) values.set(key, quantity(text, entry.at(key), kinds[key]));
  }
  return values;
}

function quantity(text: string, where: Where, kind: QuantityId): string {
  return usualText(kind, text) ?? refuse(where, message`a value of the language`, text);
}

/** A take of a shot is told once: nobody could say which of two is meant. */
function refuseTwice(takes: readonly DayTake[]): void {
  const seen = new Set<string>();
  takes.forEach(({ shot, take, at }, index) => {
    const key = `${shot} ${take} ${at}`;
    if (seen.has(key))
      throw new NotReadable(message`takes[${index + 1}] repeats take ${take} of ${shot}`);
    seen.add(key);
  });
}
