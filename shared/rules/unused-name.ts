import { removal } from '../plan/fixes.ts';
import { inLanguage, message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly name: string;
  readonly noun: string;
}

/** Removes from the example plan what its shots don't need, except one tube. */
const TIDIED = {
  'rigs/stacked': null,
  'rigs/crowded': null,
  'rigs/plain': null,
  'lights/bulb': null,
  'kit/lenses/short-50': null,
};

export const unusedName: PlanRule<Facts> = {
  name: 'unused-name',
  severity: 'hint',
  docs: {
    when: 'nothing in a plan with shots refers to an entry.',
    why: 'The entry may be left over, or a shot may name another one by mistake. Files shared by several plans are not checked.',
    remedy: 'Use it, remove it, or move it to a shared file.',
    bad: [{ says: 'a tube that no rig has', change: TIDIED }],
    good: [{ says: 'nothing but what is used', change: { ...TIDIED, 'kit/tubes/tube-20': null } }],
  },
  check({ file, shots, entries }) {
    if (shots.length === 0) return [];
    return entries
      .filter(({ used }) => !used)
      .map(({ id, name, noun }) => ({
        at: { file, entry: id, path: [], part: 'key' as const },
        facts: { name, noun },
      }));
  },
  words: ({ name, noun }) => ({
    what: message`Nothing in this plan uses the ${inLanguage(noun)} ${name}.`,
  }),
  fixes: ({ at, facts: { name } }) => [
    removal(message`Remove ${name}`, at, message`its values are deleted`),
  ],
};
