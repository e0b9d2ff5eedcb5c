/** The states of a shot and the severities of findings in words. */
import type { ShotSheet, ShotState } from '../../api/sheet.ts';
import type { Readiness } from '../../rules/readiness.ts';
import type { Severity } from '../../rules/rule.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, later, message } from '../../words/message.ts';

const STATE_WORDS: Readonly<Record<ShotState, string>> = {
  ready: later`Ready`,
  look: later`Needs attention`,
  'not-ready': later`Has errors`,
  unread: later`Not read`,
};

/** A shot that nothing is wrong with still waits for the checks that nobody has done. */
export function stateWords({
  state,
  lacks,
  checks,
}: Pick<ShotSheet, 'state' | 'lacks' | 'checks'>): string {
  if (state === 'look' && lacks.length > 0) return message`Needs attention: ${lacks.join(', ')}`;
  const open = checks.filter(({ done }) => !done).length;
  if (state !== 'ready' || open === 0) return inLanguage(STATE_WORDS[state]);
  return open === 1 ? message`No errors; 1 check open` : message`No errors; ${open} checks open`;
}

export function lackWords({ unknown, missing, partly }: Readiness): readonly string[] {
  const names = unknown.map((one) => (one === 'depth' ? message`DOF` : message`exposure`));
  return [
    ...(partly ? [message`part of the plan is unread`] : []),
    ...(names.length > 0 ? [message`${allOf(names)} unknown`] : []),
    ...(missing === 0
      ? []
      : [missing === 1 ? message`1 check missing` : message`${missing} checks missing`]),
  ];
}

export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  error: later`Error`,
  warning: later`Warning`,
  note: later`Note`,
  hint: later`Hint`,
};
