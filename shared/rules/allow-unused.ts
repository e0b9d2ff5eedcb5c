import { removal } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly rule: string;
  /** The shot whose `allow` it stands in; null: it stands in the plan's own. */
  readonly owner: string | null;
}

export const allowUnused: PlanRule<Facts> = {
  name: 'allow-unused',
  severity: 'warning',
  docs: {
    when: 'an acceptance in `allow` matches no finding.',
    why: 'An acceptance left in the plan would hide the same finding when it returns for another reason.',
    remedy: 'Remove it. If the finding returns, you can accept it again.',
    bad: [
      {
        says: 'nothing to accept in the shot',
        change: { 'shots/frost/allow': '{ depth-short: { because: only the edge matters } }' },
      },
    ],
    good: [
      {
        says: 'short depth of field, accepted',
        change: {
          'shots/frost/aperture': 'f/4',
          'shots/frost/iso': '320',
          'shots/frost/allow': '{ depth-short: { because: only the edge matters } }',
        },
      },
    ],
  },
  check({ shots, allow, accepted }) {
    if (allow.length === 0) return [];
    const needed = new Set([...accepted, ...shots.flatMap((shot) => shot.acceptedByPlan)]);
    return allow
      .filter(({ rule }) => !needed.has(rule))
      .map(({ rule, at }) => ({ at, facts: { rule, owner: null } }));
  },
  words: ({ rule, owner }) => ({
    what: message`${owner ?? message`The plan`} has no \`${rule}\` finding to accept.`,
    why: message`The acceptance would hide a later finding with another cause.`,
  }),
  fixes: ({ at, facts: { rule } }) => [removal(message`Remove the acceptance of ${rule}`, at)],
};
