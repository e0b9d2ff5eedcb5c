import { inLanguage, later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const missingKey: TextRule = {
  name: 'missing-key',
  severity: 'error',
  docs: {
    when: 'something that an entry can’t do without is not there.',
    why: 'What is merely unknown may be left out, and the figures that need it say so; without these keys there is nothing to work out.',
    remedy: 'Write the key.',
    bad: [{ says: 'a shot without its rig', change: { 'shots/frost/rig': null } }],
    good: [{ says: 'with it', change: { 'shots/frost/rig': 'bench' } }],
  },
  words: wordsFrom(
    {
      'missing-key': ({ key = '', of = '', keys = '' }) => {
        const lacking = (keys || key).split(', ').map((name) => `\`${name}\``);
        return {
          what: of
            ? message`This ${inLanguage(of)} lacks ${lacking.join(', ')}.`
            : message`This entry lacks ${lacking.join(', ')}.`,
        };
      },
      'missing-version': () => ({
        what: message`The file doesn’t say which version of the language it is in.`,
        why: message`Its first line should be \`shootplan: 1\`.`,
      }),
    },
    later`A key is missing`,
  ),
};
