import { inLanguage, message } from '../words/message.ts';
import { type PlanRule, removal } from './plan-rule.ts';

interface Facts {
  readonly name: string;
  readonly noun: string;
}

/** Takes out of the example's plan what its shots don't need, but for a tube. */
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
    when: 'something in a plan with shots is referred to by nothing in it.',
    why: 'It may be left over, or meant for a shot that names something else. Files that others use hold kit for many plans and are never asked.',
    remedy: 'Use it, remove it, or move it to a file that plans share.',
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
    removal(message`Remove ${name}`, at, message`what it says is lost`),
  ],
};
