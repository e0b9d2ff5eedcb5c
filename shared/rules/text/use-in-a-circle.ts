import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const useInACircle: TextRule = {
  name: 'use-in-a-circle',
  severity: 'error',
  docs: {
    when: 'files use each other in a circle.',
    why: 'Each file would include itself, so nobody can tell which one defines a name.',
    remedy: 'Move the entries that both need into a third file.',
    bad: [{ says: 'a file that uses itself', change: { use: '[plan.shootplan.yaml]' } }],
    good: [],
  },
  words: wordsFrom(
    {
      itself: ({ text = '' }) => ({
        what: message`${text} is this file; a file can't use itself.`,
      }),
      circle: ({ circle = '' }) => ({
        what: message`These files use each other in a circle: ${circle}.`,
      }),
    },
    later`Files use each other in a circle`,
  ),
};
