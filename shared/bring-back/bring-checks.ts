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
    // Nobody unticks a check that was never done; one that is done in the plan says more.
    if (state.kind === 'done')
      told.leave(
        message`${of} is done in the plan, but open in the day. The plan is left as it is.`,
      );
    return;
  }
  if (shot !== null && !plan.has('shots', shot)) {
    told.leave(message`${of}: the plan has no such shot.`);
    return;
  }
  const done = at.slice(0, 10);
  if (state.kind === 'done') {
    const isSame = state.done === done && (by === null || state.by === by);
    if (!isSame)
      told.leave(
        message`${of} is done in the plan on another day or by somebody else. The plan is left as it is.`,
      );
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
  const record: [string, string][] = [['done', done]];
  if (by !== null) record.push(['by', freeText(by)]);
  if (plan.set(path, flowMap(record))) told.bring(message`${of}: done.`);
  else told.leave(message`${of} can't be written where it belongs.`);
}

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
