import type { Field } from '../plan/field.ts';
import { below } from '../plan/place.ts';
import type { PlanEdit } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { hasSubjectAndRig, KNOWN_CHECKS, missingChecks } from './checks-called-for.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly checks: readonly string[];
}

/** Checks that a shot may need; a plan may add others under names of its own. */
const listed = `Known checks are ${KNOWN_CHECKS.map(({ name, what }) => `\`${name}\` (${what.charAt(0).toLowerCase()}${what.slice(1)})`).join(', ')}; you may add checks of your own`;

export const checkMissing: ShotRule<Facts> = {
  name: 'check-missing',
  severity: 'warning',
  docs: {
    when: 'checks that the shot needs are missing from the checklist of the shot, from `every-shot` and from `once`.',
    why: 'A film that lasts half a minute leaves no second take after a forgotten setting. The checks follow from the subject, the light, the move and the rig.',
    remedy: `Add the checks and tick them on the day. ${listed}.`,
    bad: [{ says: 'a film without its checks', change: { 'shots/skin/preflight': null } }],
    good: [{ says: 'all of them', change: {} }],
  },
  check({ bench }) {
    if (!hasSubjectAndRig(bench) || !bench.subject || !bench.rig) return [];
    const missing = missingChecks(bench).map(({ name }) => name);
    if (missing.length === 0) return [];
    return [{ at: { ...bench.at, part: 'key' as const }, facts: { checks: missing } }];
  },
  words: ({ checks }) => ({
    what:
      checks.length === 1
        ? message`A check is missing from the checklist: ${checks.join()}.`
        : message`${checks.length} checks are missing: ${checks.slice(0, 2).join(', ')}${checks.length > 2 ? message` and ${checks.length - 2} more` : ''}.`,
    ...(checks.length > 2 && { why: message`All of them: ${checks.join(', ')}.` }),
  }),
  numbers: ({ checks }) => ({ missing: checks.length }),
  fixes: ({ facts: { checks } }, { bench }) => [
    {
      title:
        checks.length === 1 ? message`Add ${checks.join()}` : message`Add ${checks.length} checks`,
      edits: added(checks, bench.fields.preflight),
    },
  ],
};

/** The fix adds the checks after those already listed, or all at once if there are none. */
function added(checks: readonly string[], preflight: Field<unknown>): readonly PlanEdit[] {
  const { at } = preflight;
  if (preflight.state === 'missing')
    return [{ op: 'set', at, text: checks.map((name) => `${name}: open`).join('\n') }];
  return checks.map((name) => ({ op: 'set', at: below(at, name), text: 'open' }));
}
