/** Reads the text that a filled-in sheet gives. It may come from anybody. */
import { kindOf, type QuantityId } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import {
  type CheckState,
  type Day,
  type DayCheck,
  type DayExposure,
  type DayLifetime,
  type DayMeasurement,
  type DaySettings,
  type DayTake,
  MEASURED_KINDS,
  SETTING_KINDS,
  type TakeValues,
} from './day.ts';
import { type Faults, NotReadable, Reading, refuse, textOf, type Where } from './read-json.ts';
import {
  isDay,
  LONGEST_NAME,
  LONGEST_NOTE,
  LONGEST_PATH,
  LONGEST_VALUE,
  MOST_ENTRIES,
  NAME,
  nameOf,
  readDocument,
  TIME,
  timeOf,
  type Unreadable,
} from './read-parts.ts';
import { usualText } from './value.ts';

const MOST_PARTS = 32;
const MOST_TAKES = 9999;
const MOST_BEFORE = 50;
/** A week: nothing that is counted on set lasts longer. */
const LONGEST_S = 604_800;

type ReadDay = { readonly ok: true; readonly day: Day } | Unreadable;

/** One fault refuses the whole text: nobody could say whether the rest is as it was meant. */
export function readDay(text: string): ReadDay {
  const read = readDocument(text, 'day', dayOf);
  return read.ok ? { ok: true, day: read.made } : read;
}

function dayOf(value: unknown, faults: Faults): Day {
  const top = new Reading(value, '');
  const unknown: Where[] = [];
  const each = <T>(key: string, read: (entry: Reading) => T): T[] =>
    (faults.tried(() => top.list(key, MOST_ENTRIES)) ?? []).flatMap((one, index): T[] => {
      const made = faults.tried(() => {
        const entry = new Reading(one, `${key}[${index + 1}]`);
        const its = read(entry);
        unknown.push(...entry.unknown());
        return its;
      });
      return made === undefined ? [] : [made];
    });
  const day = {
    plan: faults.tried(() => top.text('plan', LONGEST_PATH)) ?? '',
    saved: faults.tried(() => timeOf(top, 'saved')) ?? '',
    planned: faults.tried(() => plannedOf(top, unknown)) ?? new Map(),
    checks: each('checks', (entry) => checkOf(entry, unknown)),
    takes: each('takes', (entry) => takeOf(entry, unknown)),
    measurements: each('measurements', (entry) => measurementOf(entry, unknown)),
    exposures: each('exposures', exposureOf),
    lifetimes: each('lifetimes', (entry) => lifetimeOf(entry, unknown)),
  };
  unknown.push(...top.unknown());
  // Their places are counted in all that are there.
  if (faults.all.length === 0) refuseTwice(day.takes);
  return { ...day, unknown };
}

/** What each shot of the sheet had, by its name. */
function plannedOf(top: Reading, unknown: Where[]): ReadonlyMap<string, DaySettings> {
  const shots = new Reading(top.get('planned') ?? {}, 'planned');
  const names = shots.keys();
  if (names.length > MOST_ENTRIES)
    throw new NotReadable(
      message`${shots.where} has ${names.length} entries; at most ${MOST_ENTRIES} are read`,
      shots.where,
    );
  return new Map(
    names.map((name) => {
      if (!NAME.test(name)) refuse(shots.where, message`names of the plan`, name);
      const settings = new Reading(shots.get(name), shots.at(name));
      const read = valuesOf(settings, SETTING_KINDS);
      unknown.push(...settings.unknown());
      return [name, read] as const;
    }),
  );
}

/** Earlier states of an entry, the oldest first. */
const beforeOf = <T>(entry: Reading, unknown: Where[], read: (one: Reading) => T): readonly T[] =>
  entry.list('before', MOST_BEFORE).map((one, index) => {
    const state = new Reading(one, `${entry.at('before')}[${index + 1}]`);
    const made = read(state);
    unknown.push(...state.unknown());
    return made;
  });

function checkOf(entry: Reading, unknown: Where[]): DayCheck {
  const shot = entry.get('shot') ?? null;
  return {
    shot: shot === null ? null : nameOf(entry, 'shot'),
    check: nameOf(entry, 'check'),
    done: isDone(entry),
    at: timeOf(entry, 'at'),
    by: entry.maybeText('by', LONGEST_VALUE),
    before: beforeOf(entry, unknown, stateOf),
  };
}

function isDone(entry: Reading): boolean {
  const done = entry.get('done');
  return typeof done === 'boolean' ? done : refuse(entry.at('done'), message`true or false`, done);
}

/** Of a check that the plan had done, only the date is known. */
function stateOf(entry: Reading): CheckState {
  const done = isDone(entry);
  const at = done ? entry.text('at', LONGEST_VALUE) : entry.maybeText('at', LONGEST_VALUE);
  if (
    (at !== null && !(/^\d{4}-\d\d-\d\d$/.test(at) || TIME.test(at))) ||
    (at !== null && !isDay(at))
  )
    refuse(entry.at('at'), message`a date and time like 2027-03-02T10:41:07Z`, at);
  return { done, at, by: entry.maybeText('by', LONGEST_VALUE) };
}

function takeOf(entry: Reading, unknown: Where[]): DayTake {
  const take = entry.get('take');
  if (!Number.isInteger(take) || (take as number) < 1 || (take as number) > MOST_TAKES)
    refuse(entry.at('take'), message`a number from 1 to ${MOST_TAKES}`, take);
  return {
    shot: nameOf(entry, 'shot'),
    take: take as number,
    at: timeOf(entry, 'at'),
    ...takeValuesOf(entry, unknown),
    seconds: (entry.get('seconds') ?? null) === null ? null : secondsOf(entry),
    before: beforeOf(entry, unknown, (one) => takeValuesOf(one, unknown)),
  };
}

function takeValuesOf(entry: Reading, unknown: Where[]): TakeValues {
  const keep = entry.get('keep') ?? null;
  if (keep !== null && typeof keep !== 'boolean')
    refuse(entry.at('keep'), message`true, false or null`, keep);
  const used = entry.maybeText('used', LONGEST_VALUE);
  const settings = new Reading(entry.get('set') ?? {}, entry.at('set'));
  const made = {
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
  const parts = namesOf(row, 'with');
  const made = {
    lens: nameOf(entry, 'lens'),
    parts,
    ring: quantity(row.text('ring', LONGEST_VALUE), row.at('ring'), 'ring'),
    values: valuesOf(row, MEASURED_KINDS),
    before: beforeOf(entry, unknown, (one) => valuesOf(one, MEASURED_KINDS)),
  };
  unknown.push(...row.unknown());
  return made;
}

function namesOf(entry: Reading, key: string): readonly string[] {
  return entry.list(key, MOST_PARTS).map((one, index) => {
    const where = `${entry.at(key)}[${index + 1}]`;
    const text = textOf(one, where, LONGEST_NAME);
    return NAME.test(text) ? text : refuse(where, message`a name of the plan`, text);
  });
}

function exposureOf(entry: Reading): DayExposure {
  const read = (key: string, kind: QuantityId): string =>
    quantity(entry.text(key, LONGEST_VALUE), entry.at(key), kind);
  return {
    shot: nameOf(entry, 'shot'),
    at: timeOf(entry, 'at'),
    found: read('found', 'over-under'),
    planned: read('planned', 'over-under'),
    body: nameOf(entry, 'body'),
    iso: read('iso', 'iso'),
    lights: namesOf(entry, 'lights'),
  };
}

function secondsOf(entry: Reading): number {
  const seconds = entry.get('seconds');
  return typeof seconds === 'number' && seconds >= 0 && seconds <= LONGEST_S
    ? seconds
    : refuse(entry.at('seconds'), message`a number from 0 to ${LONGEST_S}`, seconds);
}

function lifetimeOf(entry: Reading, unknown: Where[]): DayLifetime {
  return {
    shot: nameOf(entry, 'shot'),
    at: timeOf(entry, 'at'),
    seconds: secondsOf(entry),
    subject: nameOf(entry, 'subject'),
    before: beforeOf(entry, unknown, (one) =>
      quantity(one.text('lifetime', LONGEST_VALUE), one.at('lifetime'), 'time'),
    ),
  };
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
  return (
    usualText(kind, text) ??
    refuse(where, message`a value such as ${kindOf(kind).examples[0] ?? ''}`, text)
  );
}

/** A take of a shot is told once: nobody could say which of two is meant. */
function refuseTwice(takes: readonly DayTake[]): void {
  const seen = new Set<string>();
  takes.forEach(({ shot, take, at }, index) => {
    const key = `${shot} ${take} ${at}`;
    if (seen.has(key))
      throw new NotReadable(
        message`takes[${index + 1}] repeats take ${take} of ${shot}`,
        `takes[${index + 1}]`,
      );
    seen.add(key);
  });
}
