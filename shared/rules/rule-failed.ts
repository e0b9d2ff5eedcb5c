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
    when: 'a rule of this program broke down: which, and where. All others went on.',
    why: 'A rule that fails in silence would make a plan look clean that nobody has checked.',
    remedy:
      'Report it with the plan, or the part of it that still shows it; until then check by hand what that rule checks.',
    bad: [],
    good: [],
  },
  words: ({ rule, error }) => ({
    what: message`The rule \`${rule}\` broke down here and found nothing out.`,
    why: message`This is a fault of Lamella, not of the plan: ${error}`,
  }),
};
