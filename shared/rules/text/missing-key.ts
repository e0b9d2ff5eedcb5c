import { inLanguage, later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const missingKey: TextRule = {
  name: 'missing-key',
  severity: 'error',
  docs: {
    when: 'an entry lacks a required key.',
    why: 'Unknown values may be left out, and results that need them say so. Without required keys nothing can be calculated.',
    remedy: 'Add the key.',
    bad: [{ says: 'a shot without its rig', change: { 'shots/frost/rig': null } }],
    good: [{ says: 'with it', change: { 'shots/frost/rig': 'bench' } }],
  },
  words: wordsFrom(
    {
      'missing-key': ({ key = '', of = '', keys = '' }) => {
        const lacking = (keys || key).split(', ').map((name) => `\`${name}\``);
        return {
          what: of
            ? message`This ${inLanguage(of)} needs ${lacking.join(', ')}.`
            : message`This entry needs ${lacking.join(', ')}.`,
        };
      },
      'missing-version': () => ({
        what: message`The file doesn't state its language version.`,
        why: message`Start it with \`shootplan: 1\`.`,
      }),
    },
    later`A key is missing`,
  ),
};
