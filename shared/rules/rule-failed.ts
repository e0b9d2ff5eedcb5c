import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly rule: string;
  readonly error: string;
}

export const ruleFailed: RuleCore<Facts> = {
  name: 'rule-failed',
  severity: 'error',
  docs: {
    when: 'a rule of this program failed. All other rules still ran.',
    why: 'A rule that fails silently would make an unchecked plan look clean.',
    remedy:
      'Report it with the plan, or with the part that still shows it. Until then, check by hand what that rule checks.',
    bad: [],
    good: [],
  },
  words: ({ rule, error }) => ({
    what: message`The rule \`${rule}\` failed here, so it checked nothing.`,
    why: message`This is a fault in Lamella, not in the plan: ${error}`,
  }),
};
