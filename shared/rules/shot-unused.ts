import { message } from '../words/message.ts';
import { withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly shot: string;
}

export const shotUnused: PlanRule<Facts> = {
  name: 'shot-unused',
  severity: 'hint',
  docs: {
    when: 'the plan has an edit, but no cut uses the shot.',
    why: 'A shot that the edit does not need uses up subject and light on the day. Or the edit has left it out by mistake.',
    remedy: 'Add it to the edit, or shoot it last.',
    bad: [
      { says: 'an edit without one shot', change: withCuts({ one: 'shot: frost, duration: 4 s' }) },
    ],
    good: [
      {
        says: 'every shot in the edit',
        change: withCuts({ one: 'shot: frost, duration: 4 s', two: 'shot: skin, duration: 4 s' }),
      },
    ],
  },
  check({ edit, shots }) {
    if (!edit) return [];
    // A cut that can't be read may well show it.
    if (edit.cuts.some(({ shot }) => shot === null)) return [];
    return shots
      .filter(({ shot }) => !edit.plan.shots.has(shot))
      .map(({ shot, at }) => ({ at: { ...at, part: 'key' as const }, facts: { shot } }));
  },
  words: ({ shot }) => ({ what: message`No cut of the edit uses ${shot}.` }),
};
