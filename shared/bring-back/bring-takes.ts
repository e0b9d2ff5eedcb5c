/** Takes as clips: file, verdict, remark, actual settings and the best part. */
import type { QuantityId } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import {
  type Day,
  type DaySettings,
  type DayTake,
  SETTING_KINDS,
  type SettingKey,
  type TakeValues,
} from './day.ts';
import type { PlanText } from './plan-text.ts';
import { sameAs, settle } from './three-ways.ts';
import type { Told } from './told.ts';
import { saysSame } from './value.ts';
import { flowMap, freeText } from './write.ts';

export function bringTakes({ takes, planned }: Day, plan: PlanText, told: Told): void {
  for (const take of takes) {
    const then = planned.get(take.shot) ?? new Map<SettingKey, string>();
    bringTake({ ...take, usedThen: usedThen(take, then, plan) }, plan, told);
  }
}

interface LaidTake extends DayTake {
  readonly usedThen: DaySettings;
}

/**
 * Settings that the sheet had for a take's shot and that the plan has no more: they were used, whatever
 * the plan says now.
 */
const usedThen = ({ shot, set }: DayTake, planned: DaySettings, plan: PlanText): DaySettings =>
  new Map(
    [...planned].filter(([key, text]) => {
      const now = plan.scalar('shots', shot, key);
      return !set.has(key) && (now === null || !saysSame(now, text, SETTING_KINDS[key]));
    }),
  );

function tellUsed(
  { shot }: DayTake,
  key: SettingKey,
  text: string,
  of: string,
  plan: PlanText,
  told: Told,
): void {
  const now = plan.scalar('shots', shot, key) ?? message`nothing`;
  told.bring(message`${of} keeps \`${key}\` ${text} of the sheet: the plan has ${now} now.`);
}

function bringTake(take: LaidTake, plan: PlanText, told: Told): void {
  const { shot } = take;
  const of = message`Take ${take.take} of ${shot}`;
  if (!plan.has('shots', shot)) {
    told.leave(message`${of}: the plan has no such shot.`);
    return;
  }
  const list = plan.at('clips', shot);
  if (list !== null && list.kind !== 'seq') {
    told.leave(message`${of}: \`clips\` of ${shot} is no list. It is left as it is.`);
    return;
  }
  const count = list?.items.length ?? 0;
  const index = matchOf(take, plan, count);
  if (index >= 0) {
    mergeInto(take, plan, index, of, told);
    return;
  }
  const set = new Map([...take.set, ...take.usedThen]);
  const written = flowMap([
    ...valuesOf(take, ownOf(take)).map(({ key, written }) => [key, written] as const),
    ...(set.size > 0 ? [['set', flowMap(set)] as const] : []),
  ]);
  // A list that has items takes one more; else there is none yet.
  const isWritten =
    count > 0
      ? plan.set(['clips', shot, count], written)
      : plan.set(['clips', shot], `- ${written}\n`);
  if (!isWritten) {
    told.leave(message`${of} can't be written where it belongs.`);
    return;
  }
  told.bring(message`${of}: added.`);
  for (const [key, text] of take.usedThen) tellUsed(take, key, text, of, plan, told);
}

interface Value {
  readonly key: string;
  readonly text: string;
  /** As YAML. */
  readonly written: string;
  /** null: free text. */
  readonly kind: QuantityId | null;
}

/** What tells it from others. */
const ownOf = ({ take, at }: DayTake): readonly Value[] => [
  { key: 'take', text: String(take), written: String(take), kind: 'count' },
  { key: 'time', text: at, written: at, kind: null },
];

/** All but the settings, in the order in which they are written. */
function valuesOf(
  { clip, keep, note, used }: TakeValues,
  own: readonly Value[] = [],
): readonly Value[] {
  const free = (key: string, text: string | null): Value[] =>
    text === null ? [] : [{ key, text, written: freeText(text), kind: null }];
  const plain = (key: string, text: string | null, kind: QuantityId | null = null): Value[] =>
    text === null ? [] : [{ key, text, written: text, kind }];
  return [
    ...free('file', clip),
    ...own,
    ...plain('verdict', keep === null ? null : keep ? 'keep' : 'reject'),
    ...plain('used', used, 'time-range'),
    ...free('note', note),
  ];
}

/**
 * The clip of the plan that is this take; −1: none yet. It is by number and time; a clip that was
 * listed by hand is by its file, unless it is of another take or day.
 */
function matchOf(take: DayTake, plan: PlanText, count: number): number {
  const path = (index: number, key: string) => ['clips', take.shot, index, key] as const;
  const read = (index: number, key: string) => plan.scalar(...path(index, key));
  const isTake = (text: string | null) =>
    text !== null && saysSame(text, String(take.take), 'count');
  const all = Array.from({ length: count }, (_, index) => index);
  const own = all.find((index) => isTake(read(index, 'take')) && read(index, 'time') === take.at);
  if (own !== undefined) return own;
  const { clip } = take;
  if (clip === null) return -1;
  return all.findIndex((index) => {
    const [file, number, time] = [read(index, 'file'), read(index, 'take'), read(index, 'time')];
    return (
      file !== null &&
      (file === clip || file.endsWith(`/${clip}`)) &&
      (number === null || isTake(number)) &&
      (time === null || time.slice(0, 10) === take.at.slice(0, 10))
    );
  });
}

function mergeInto(take: LaidTake, plan: PlanText, index: number, of: string, told: Told): void {
  const at = ['clips', take.shot, index] as const;
  // Of another take with the same file the sheet gave nothing.
  const before = [null, take.at].includes(plan.scalar(...at, 'time')) ? take.before : [];
  const former = before.flatMap((one) => valuesOf(one));
  let added = 0;
  const lay = (
    path: readonly (string | number)[],
    value: Value,
    known: readonly string[],
  ): void => {
    const { key, text, written, kind } = value;
    const isSame = sameAs(kind);
    if (plan.has(...path))
      settle(
        {
          key,
          now: plan.scalar(...path),
          day: text,
          before: known,
          isSame: (a, b) => isSame(a, b) || (key === 'file' && a.endsWith(`/${b}`)),
        },
        of,
        told,
        () => plan.set(path, written),
      );
    else if (plan.set(path, written)) added++;
    else told.leave(message`${of}: \`${key}\` can't be written where it belongs.`);
  };

  for (const value of valuesOf(take, ownOf(take)))
    lay(
      [...at, value.key],
      value,
      former.flatMap(({ key, text }) => (key === value.key ? [text] : [])),
    );
  for (const key of new Set(former.map((one) => one.key))) {
    const now = plan.scalar(...at, key);
    const isGiven = former.some((one) => one.key === key && one.text === now);
    if (isGiven && !valuesOf(take).some((one) => one.key === key))
      told.leave(
        message`${of}: \`${key}\` is ${now ?? ''} in the plan, but was cleared in the day. The plan is left as it is.`,
      );
  }
  for (const [key, text] of take.set)
    lay(
      [...at, 'set', key],
      { key, text, written: text, kind: SETTING_KINDS[key] },
      before.flatMap(({ set }) => set.get(key) ?? []),
    );
  // What the plan has of the take says more than what was planned.
  for (const [key, text] of take.usedThen)
    if (!plan.has(...at, 'set', key) && plan.set([...at, 'set', key], text))
      tellUsed(take, key, text, of, plan, told);
  if (added > 0) told.bring(message`${of}: completed.`);
}
