/** Checks that were done, with when and by whom. */
import { message } from '../words/message.ts';
import type { DayCheck } from './day.ts';
import type { PlanText } from './plan-text.ts';
import type { Told } from './told.ts';
import { flowMap, freeText } from './write.ts';

export function bringChecks(checks: readonly DayCheck[], plan: PlanText, told: Told): void {
  for (const check of checks) bringCheck(check, plan, told);
}

function bringCheck(check: DayCheck, plan: PlanText, told: Told): void {
  const { shot, check: name, at, by } = check;
  const of = shot === null ? message`Check ${name}` : message`Check ${name} of ${shot}`;
  const path = shot === null ? ['preflight', 'once', name] : ['shots', shot, 'preflight', name];
  const state = stateAt(plan, path);
  if (!check.done) {
    openAgain(check, state, of, told, () => plan.set(path, 'open'));
    return;
  }
  if (shot !== null && !plan.has('shots', shot)) {
    told.leave(message`${of}: the plan has no such shot.`);
    return;
  }
  const done = at.slice(0, 10);
  const write = (): boolean => {
    const record: [string, string][] = [['done', done]];
    if (by !== null) record.push(['by', freeText(by)]);
    return plan.set(path, flowMap(record));
  };
  if (state.kind === 'done') {
    if (state.done !== done || (by !== null && state.by !== by))
      settleDone(check, state, { done, by }, of, told, write);
    return;
  }
  if (state.kind === 'other') {
    told.leave(
      message`${of} has a value in the plan that is no state of a check. It is left as it is.`,
    );
    return;
  }
  if (state.kind === 'none' && !isForEveryShot(plan, shot, name)) {
    told.leave(message`${of}: the plan has no such check.`);
    return;
  }
  if (write()) told.bring(message`${of}: done.`);
  else told.leave(message`${of} can't be written where it belongs.`);
}

/** Of a check that is done in both, but not alike. */
function settleDone(
  check: DayCheck,
  plan: Done,
  day: Done,
  of: string,
  told: Told,
  write: () => boolean,
): void {
  const [now, then] = [wordsOf(plan), wordsOf(day)];
  if (isKnownBefore(check, plan)) {
    if (write()) told.bring(message`${of}: ${then} instead of ${now}.`);
    else told.leave(message`${of} can't be written where it belongs.`);
  } else if (isKnownBefore(check, day))
    told.keep(
      message`${of} was changed to ${now} in the plan; the day has ${then} as before. The plan is kept.`,
    );
  else
    told.leave(
      message`${of} is done in the plan (${now}) and in the day (${then}). The plan is left as it is.`,
    );
}

/** A check that somebody opened again. Nobody unticks a check that was never done. */
function openAgain(
  check: DayCheck,
  state: State,
  of: string,
  told: Told,
  write: () => boolean,
): void {
  if (state.kind !== 'done') return;
  if (!isKnownBefore(check, state))
    told.leave(
      message`${of} is done in the plan (${wordsOf(state)}), but open in the day. The plan is left as it is.`,
    );
  else if (write()) told.bring(message`${of}: open again.`);
  else told.leave(message`${of} can't be written where it belongs.`);
}

type Done = Pick<Extract<State, { kind: 'done' }>, 'done' | 'by'>;

/** Whether the sheet knew it so, or gave it so before. */
const isKnownBefore = ({ before }: DayCheck, state: Done): boolean =>
  before.some(({ done, at, by }) => done && at?.slice(0, 10) === state.done && by === state.by);

/** "2027-03-02, op" */
const wordsOf = ({ done, by }: Done): string =>
  [done, by].filter((word) => word !== null).join(', ') || message`something else`;

type State =
  | { readonly kind: 'none' | 'open' | 'other' }
  | { readonly kind: 'done'; readonly done: string | null; readonly by: string | null };

function stateAt(plan: PlanText, path: readonly string[]): State {
  if (!plan.has(...path)) return { kind: 'none' };
  const node = plan.at(...path);
  if (node === null || (node.kind === 'scalar' && node.text === 'open')) return { kind: 'open' };
  if (node.kind !== 'map') return { kind: 'other' };
  return { kind: 'done', done: plan.scalar(...path, 'done'), by: plan.scalar(...path, 'by') };
}

function isForEveryShot(plan: PlanText, shot: string | null, name: string): boolean {
  const list = plan.at('preflight', 'every-shot');
  return (
    shot !== null &&
    list?.kind === 'seq' &&
    list.items.some((item) => item?.kind === 'scalar' && item.text === name)
  );
}
