/** Takes as clips: file, verdict, remark, actual settings and the best part. */
import type { QuantityId } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { type DayTake, SETTING_KINDS, type SettingKey } from './day.ts';
import type { PlanText } from './plan-text.ts';
import type { Told } from './told.ts';
import { saysSame } from './value.ts';
import { flowMap, freeText } from './write.ts';

export function bringTakes(takes: readonly DayTake[], plan: PlanText, told: Told): void {
  for (const take of takes) bringTake(take, plan, told);
}

function bringTake(take: DayTake, plan: PlanText, told: Told): void {
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
  const written = flowMap([
    ...valuesOf(take).map(({ key, written }) => [key, written] as const),
    ...(take.set.size > 0 ? [['set', flowMap(take.set)] as const] : []),
  ]);
  // A list that has items takes one more; else there is none yet.
  const isWritten =
    count > 0
      ? plan.set(['clips', shot, count], written)
      : plan.set(['clips', shot], `- ${written}\n`);
  if (isWritten) told.bring(message`${of}: added.`);
  else told.leave(message`${of} can't be written where it belongs.`);
}

interface Value {
  readonly key: string;
  readonly text: string;
  /** As YAML. */
  readonly written: string;
  /** null: free text. */
  readonly kind: QuantityId | null;
}

/** All but the settings, in the order in which they are written. */
function valuesOf({ take, at, clip, keep, note, used }: DayTake): readonly Value[] {
  const free = (key: string, text: string | null): Value[] =>
    text === null ? [] : [{ key, text, written: freeText(text), kind: null }];
  const plain = (key: string, text: string | null, kind: QuantityId | null = null): Value[] =>
    text === null ? [] : [{ key, text, written: text, kind }];
  return [
    ...free('file', clip),
    ...plain('take', String(take), 'count'),
    ...plain('time', at),
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

function mergeInto(take: DayTake, plan: PlanText, index: number, of: string, told: Told): void {
  const at = ['clips', take.shot, index] as const;
  let added = 0;
  const lay = (path: readonly (string | number)[], value: Value): void => {
    const { key, text, written, kind } = value;
    if (plan.has(...path)) {
      const now = plan.scalar(...path);
      const isSame =
        now !== null && (saysSame(now, text, kind) || (key === 'file' && now.endsWith(`/${text}`)));
      if (!isSame)
        told.leave(
          message`${of}: \`${key}\` is ${now ?? message`something else`} in the plan and ${text} in the day. The plan is left as it is.`,
        );
      return;
    }
    if (plan.set(path, written)) added++;
    else told.leave(message`${of}: \`${key}\` can't be written where it belongs.`);
  };
  for (const value of valuesOf(take)) lay([...at, value.key], value);
  for (const [key, text] of take.set)
    lay([...at, 'set', key], { key, text, written: text, kind: kindOfSetting(key) });
  if (added > 0) told.bring(message`${of}: completed.`);
}

const kindOfSetting = (key: SettingKey): QuantityId => SETTING_KINDS[key];
