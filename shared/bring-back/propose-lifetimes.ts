/** Lifetimes that were counted, as the range of their subject. */
import { message } from '../words/message.ts';
import type { DayLifetime } from './day.ts';
import type { PlanText } from './plan-text.ts';
import { sameAs, settle } from './three-ways.ts';
import type { Told } from './told.ts';
import { usualText } from './value.ts';

export function proposeLifetimes(
  lifetimes: readonly DayLifetime[],
  plan: PlanText,
  told: Told,
): void {
  const bySubject = new Map<string, DayLifetime[]>();
  for (const one of lifetimes)
    bySubject.set(one.subject, [...(bySubject.get(one.subject) ?? []), one]);
  for (const [subject, counted] of bySubject) proposeSubject(subject, counted, plan, told);
}

function proposeSubject(
  subject: string,
  counted: readonly DayLifetime[],
  plan: PlanText,
  told: Told,
): void {
  const seconds = counted.map((one) => one.seconds);
  const [low, high] = [Math.floor(Math.min(...seconds)), Math.ceil(Math.max(...seconds))];
  if (counted.length < 2) {
    told.keep(
      message`Lifetime of ${subject} was counted once, ${seconds[0] ?? 0} s. A range needs two.`,
    );
    return;
  }
  const from = Math.max(1, low);
  const to = Math.max(1, high);
  const day = from < to ? `${from} to ${to} s` : `${to} s`;
  if (!plan.has('subjects', subject) || usualText('time', day) === undefined) {
    told.keep(message`This file has no subject ${subject}. Its lifetime was counted: ${day}`);
    return;
  }
  const path = ['subjects', subject, 'lifetime'];
  if (plan.has(...path)) {
    const before = counted.flatMap((one) => one.before);
    const value = { key: 'lifetime', now: plan.scalar(...path), day, before };
    settle({ ...value, isSame: sameAs('time') }, subject, told, () => plan.set(path, day));
  } else if (plan.set(path, day))
    told.bring(message`Lifetime of ${subject}: ${day}, counted ${counted.length} times.`);
  else told.leave(message`Lifetime of ${subject} can't be written where it belongs.`);
}
