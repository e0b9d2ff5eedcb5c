import { message } from '../words/message.ts';
import { type PlanRule, removal } from './plan-rule.ts';

interface Facts {
  readonly rule: string;
  /** The shot whose `allow` it stands in; null: it stands in the plan's own. */
  readonly owner: string | null;
}

export const allowUnused: PlanRule<Facts> = {
  name: 'allow-unused',
  severity: 'warning',
  docs: {
    when: 'an acceptance accepts nothing: the finding that it was written for is no longer there.',
    why: 'An acceptance left behind would hide the same finding when it comes back for another reason.',
    remedy: 'Remove it; the finding will be back if it is needed again.',
    bad: [
      {
        says: 'nothing to accept in the shot',
        change: { 'shots/frost/allow': '{ depth-short: { because: only the rim matters } }' },
      },
    ],
    good: [
      {
        says: 'the depth is short, and may be',
        change: {
          'shots/frost/aperture': 'f/4',
          'shots/frost/iso': '320',
          'shots/frost/allow': '{ depth-short: { because: only the rim matters } }',
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
    what: message`There is no \`${rule}\` in ${owner ?? message`the plan`} to accept.`,
    why: message`The acceptance would hide one that comes later for another reason.`,
  }),
  fixes: ({ at, facts: { rule } }) => [removal(message`Remove the acceptance of ${rule}`, at)],
};
