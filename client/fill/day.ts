/// <reference lib="dom" />
/** What is kept of a day, and the one text that brings it back into the plan. */
import type {
  FillCheck,
  FillData,
  FillMeasurement,
  FillShot,
} from '../../shared/report/sheet/fill.ts';
import { asWritten, plain } from './as-written.ts';
import type { Store } from './store.ts';

interface Done {
  readonly done: boolean;
  /** By ISO 8601, as all times are. */
  readonly at: string;
  readonly by?: string;
  /** As the plan had it when it was ticked. */
  readonly was?: CheckWas;
}

interface CheckWas {
  readonly done: boolean;
  readonly at?: string;
  readonly by?: string;
}

export interface Take {
  readonly at: string;
  /** null: it still runs. */
  readonly seconds: number | null;
  readonly clip: string;
  readonly keep: boolean | null;
  readonly note: string;
  readonly used: string;
  /** Settings of this take that are not as planned, by key. */
  readonly set: Readonly<Record<string, string>>;
  /** Settings of the shot when the take was started, as the plan writes them. */
  readonly planned?: Readonly<Record<string, string>>;
}

/** How bright the pictures of a shot were, as typed, with what that is compared to. */
interface Exposure {
  readonly at: string;
  readonly text: string;
  readonly asked: NonNullable<FillShot['exposureAsked']>;
}

interface Lifetime {
  readonly at: string;
  readonly seconds: number;
  readonly asked: NonNullable<FillShot['lifetimeAsked']>;
}

type Texts = Readonly<Record<string, string>>;

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);

const isTime = (value: unknown): boolean =>
  typeof value === 'string' && Number.isFinite(Date.parse(value));

const isTexts = (value: unknown): value is Texts =>
  isRecord(value) && Object.values(value).every((one) => typeof one === 'string');

const isDone = (value: unknown): value is Done =>
  isRecord(value) &&
  typeof value.done === 'boolean' &&
  isTime(value.at) &&
  (value.by === undefined || typeof value.by === 'string') &&
  (value.was === undefined || isWas(value.was));

const isWas = (value: unknown): value is CheckWas =>
  isRecord(value) &&
  typeof value.done === 'boolean' &&
  [value.at, value.by].every((one) => one === undefined || typeof one === 'string');

const isExposure = (value: unknown): value is Exposure =>
  isRecord(value) &&
  isTime(value.at) &&
  typeof value.text === 'string' &&
  isRecord(value.asked) &&
  [value.asked.body, value.asked.iso, value.asked.planned].every(
    (one) => typeof one === 'string',
  ) &&
  isList(value.asked.lights);

const isLifetime = (value: unknown): value is Lifetime =>
  isRecord(value) &&
  isTime(value.at) &&
  typeof value.seconds === 'number' &&
  isRecord(value.asked) &&
  typeof value.asked.subject === 'string';

const isTake = (value: unknown): value is Take =>
  isRecord(value) &&
  isTime(value.at) &&
  (value.seconds === null || typeof value.seconds === 'number') &&
  [value.clip, value.note, value.used].every((one) => typeof one === 'string') &&
  (value.keep === null || typeof value.keep === 'boolean') &&
  isTexts(value.set) &&
  (value.planned === undefined || isTexts(value.planned));

/** Of an entry: its parts, of which none ends another. */
const nameOf = (...parts: readonly string[]): string =>
  parts.map((part) => part.replace(/[%/]/g, (sign) => (sign === '/' ? '%2F' : '%25'))).join('/');
const partsOf = (name: string): string[] =>
  name.split('/').map((part) => part.replaceAll('%2F', '/').replaceAll('%25', '%'));

export const checkName = (shot: string | null, check: string): string =>
  nameOf('check', shot ?? '', check);
const takeStart = (shot: string): string => `${nameOf('take', shot)}/`;
export const takeName = (shot: string, take: number): string => takeStart(shot) + take;
export const measuredName = ({ lens, given }: Pick<FillMeasurement, 'lens' | 'given'>): string =>
  nameOf('measured', lens, given.ring, given.with.join('+'));

const givenName = (name: string): string => nameOf('given', name);

export class Day {
  constructor(
    readonly data: FillData,
    readonly store: Store,
  ) {}

  done(shot: string | null, check: string): Done | null {
    return this.store.get(checkName(shot, check), isDone);
  }

  /** What the plan has as well is no news. */
  setDone(shot: string | null, { name, ...was }: FillCheck, done: boolean): void {
    const { by } = this.about();
    const now: Done = { done, at: new Date().toISOString(), ...(by && { by }), was };
    this.store.set(checkName(shot, name), done === was.done ? null : now);
  }

  takes(shot: string): readonly (readonly [number: number, take: Take])[] {
    return this.#takeNumbers(shot).flatMap((number) => {
      const take = this.store.get(takeName(shot, number), isTake);
      return take ? [[number, take] as const] : [];
    });
  }

  /** One that can't be read keeps its number. */
  #takeNumbers(shot: string): readonly number[] {
    const start = takeStart(shot);
    return this.store
      .names(start)
      .map((name) => Number(name.slice(start.length)))
      .filter((number) => Number.isSafeInteger(number) && number > 0)
      .sort((a, b) => a - b);
  }

  nextNumber = (shot: string): number => (this.#takeNumbers(shot).at(-1) ?? 0) + 1;

  startTake({ name: shot, planned }: FillShot): void {
    const at = new Date().toISOString();
    const open = { seconds: null, clip: '', keep: null, note: '', used: '', set: {} };
    const take: Take = { at, ...open, planned };
    this.store.set(takeName(shot, this.nextNumber(shot)), take);
  }

  /** States of an entry that were saved before, the oldest first. */
  given = (name: string): readonly unknown[] => this.store.get(givenName(name), isList) ?? [];

  setGiven(name: string, states: readonly unknown[]): void {
    this.store.set(givenName(name), states);
  }

  /** Changes what is kept now, which another tab may have changed. */
  changeTake(shot: string, number: number, change: Partial<Take>): void {
    const take = this.store.get(takeName(shot, number), isTake);
    if (take) this.store.set(takeName(shot, number), { ...take, ...change });
  }

  removeTake(shot: string, number: number): void {
    this.store.set(takeName(shot, number), null);
    this.store.set(givenName(takeName(shot, number)), null);
  }

  keptTakes = (shot: string): number =>
    this.takes(shot).filter(([, { keep }]) => keep === true).length;

  /** Since when the subject of a shot lives; null: no count runs. */
  lifeSince(shot: string): string | null {
    const isText = (value: unknown): value is string => isTime(value);
    return this.store.get(nameOf('life', shot), isText);
  }

  setLife(shot: string, since: string | null): void {
    this.store.set(nameOf('life', shot), since);
  }

  /** How bright the pictures of a shot were, as typed. */
  exposure = (shot: string): Exposure | null =>
    this.store.get(nameOf('exposure', shot), isExposure);

  setExposure({ name, exposureAsked: asked }: FillShot, text: string): void {
    const at = this.exposure(name)?.at ?? new Date().toISOString();
    const now = text.trim() === '' || !asked ? null : { at, text, asked };
    this.store.set(nameOf('exposure', name), now);
  }

  /** Counted lifetimes of a shot, in order. */
  lifetimes(shot: string): readonly Lifetime[] {
    const start = `${nameOf('lived', shot)}/`;
    return this.store
      .names(start)
      .flatMap((name) => this.store.get(name, isLifetime) ?? [])
      .sort((a, b) => (a.at < b.at ? -1 : 1));
  }

  addLifetime({ name, lifetimeAsked: asked }: FillShot, seconds: number): void {
    const at = new Date().toISOString();
    if (asked) this.store.set(nameOf('lived', name, at), { at, seconds, asked });
  }

  removeLifetime(shot: string): void {
    const last = this.lifetimes(shot).at(-1);
    if (last) this.store.set(nameOf('lived', shot, last.at), null);
  }

  measured = (one: FillMeasurement): Texts => this.store.get(measuredName(one), isTexts) ?? {};

  /** With the unit of its box, which a number alone is in. */
  setMeasured(one: FillMeasurement, key: string, text: string): void {
    const unit = one.boxes.find((each) => each?.key === key)?.unit ?? '';
    this.store.set(measuredName(one), { ...this.measured(one), [key]: text, [UNIT + key]: unit });
  }

  /** Whose initials go with the checks. */
  about = (): Texts => this.store.get('about', isTexts) ?? {};

  setBy(by: string): void {
    this.store.set('about', { ...this.about(), by });
  }
}

/** Of a number that was measured, beside it. */
const UNIT = 'unit of ';

const OF_SHOTS: ReadonlySet<string> = new Set(['check', 'take', 'exposure', 'lived']);

/**
 * A line that says what it is, then one JSON document of all that is kept.
 * @param isShort without blanks that only a reader needs
 */
export function dayText(day: Day, isShort = false): string {
  const { data, store } = day;
  const names = store.names('').map(partsOf);
  const placed = (shot: string): number => {
    const at = data.shots.findIndex(({ name }) => name === shot);
    return shot === '' ? -1 : at < 0 ? data.shots.length : at;
  };
  const shots = [
    ...new Set(names.flatMap(([kind = '', shot = '']) => (OF_SHOTS.has(kind) ? [shot] : []))),
  ]
    .sort()
    .sort((a, b) => placed(a) - placed(b));
  const planned = shots.flatMap((shot) => {
    const settings = day.takes(shot).at(-1)?.[1].planned;
    return settings && Object.keys(settings).length > 0 ? [[shot, settings] as const] : [];
  });
  const json = {
    plan: data.plan,
    saved: new Date().toISOString(),
    ...(planned.length > 0 && { planned: Object.fromEntries(planned) }),
    checks: shots.flatMap((shot) =>
      names
        .flatMap(([kind, of, check = '']) => (kind === 'check' && of === shot ? [check] : []))
        .sort()
        .flatMap((check) => checkJson(day, shot || null, check)),
    ),
    takes: shots.flatMap((shot) =>
      day.takes(shot).map(([number, take], index, all) => ({
        ...takeJson(shot, number, take, index === all.length - 1 ? oddExposure(day, shot) : []),
        ...beforeOf(day.given(takeName(shot, number))),
      })),
    ),
    measurements: names.flatMap(([kind, lens = '', ring = '', parts = '']) => {
      if (kind !== 'measured') return [];
      const given = { with: parts.split('+'), ring };
      const numbers = rowOf(day.measured({ lens, given, boxes: [] }));
      if (numbers.length === 0) return [];
      const row = { ...given, ...Object.fromEntries(numbers) };
      return [{ lens, row, ...beforeOf(day.given(measuredName({ lens, given }))) }];
    }),
    ...listed(
      'exposures',
      shots.flatMap((shot) => exposureJson(day, shot)),
    ),
    ...listed(
      'lifetimes',
      shots.flatMap((shot) => lifetimesJson(day, shot)),
    ),
  };
  return `lamella day 1\n${JSON.stringify(json, null, isShort ? 0 : 1)}\n`;
}

const listed = (key: string, all: readonly unknown[]) => (all.length > 0 ? { [key]: all } : {});

function exposureJson(day: Day, shot: string) {
  const kept = day.exposure(shot);
  const found = kept && asWritten('exposure', kept.text);
  return kept && found ? [{ shot, at: kept.at, found, ...kept.asked }] : [];
}

const lifetimesJson = (day: Day, shot: string) =>
  day.lifetimes(shot).map(({ at, seconds, asked: { subject, planned } }) => ({
    ...{ shot, at, seconds, subject },
    ...(typeof planned === 'string' && { before: [{ lifetime: planned }] }),
  }));

const beforeOf = (before: readonly unknown[]) => (before.length > 0 ? { before } : {});

function checkJson(day: Day, shot: string | null, check: string) {
  const state = day.done(shot, check);
  if (!state) return [];
  const { done, at, by, was } = state;
  const named = by === undefined ? '' : plain(by);
  const before = [...(was ? [was] : []), ...day.given(checkName(shot, check))];
  return [{ shot, check, done, at, ...(named && { by: named }), ...beforeOf(before) }];
}

/** An exposure that is no number of stops, as a remark. */
function oddExposure(day: Day, shot: string): readonly string[] {
  const text = day.exposure(shot)?.text;
  return text === undefined || asWritten('exposure', text) ? [] : [`exposure ${plain(text)}`];
}

/** What is no value of a plan stays readable, in the remark. */
function takeJson(
  shot: string,
  take: number,
  { at, seconds, clip, keep, note, used, set }: Take,
  besides: readonly string[],
) {
  const typed = [...Object.entries(set), ['used', used] as const].flatMap(([key, text]) =>
    plain(text) === '' ? [] : [{ key, text: plain(text), written: asWritten(key, text) }],
  );
  const odd = typed.flatMap(({ key, text, written }) =>
    written === null ? [`${key} ${text}`] : [],
  );
  const { used: best, ...settings }: Record<string, string> = Object.fromEntries(
    typed.flatMap(({ key, written }) => (written === null ? [] : [[key, written]])),
  );
  return {
    shot,
    take,
    at,
    ...(plain(clip) && { clip: plain(clip) }),
    keep,
    ...(seconds !== null && { seconds }),
    note: [plain(note), ...odd, ...besides].filter((text) => text !== '').join('; '),
    ...(Object.keys(settings).length > 0 && { set: settings }),
    ...(best !== undefined && { used: best }),
  };
}

const rowOf = (texts: Texts) =>
  Object.entries(texts).flatMap(([key, typed]) => {
    const text = plain(typed).replace(/^(\d+),(\d+)$/, '$1.$2');
    if (key.startsWith(UNIT) || text === '') return [];
    const unit = texts[UNIT + key] ?? '';
    const withUnit = unit !== '' && /^[\d.]+$/.test(text) ? `${text} ${unit}` : text;
    return [[key, asWritten(key, text) ?? withUnit] as const];
  });
