import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const misreadScalar: TextRule = {
  name: 'misread-scalar',
  severity: 'error',
  docs: {
    when: 'YAML misreads a value: it has a decimal comma, a # or a colon inside it, or a colon without a space.',
    why: 'In `{ mass: 1,5 kg }` the comma ends the value and `5 kg` becomes a key. Everything after ` #` is a comment. YAML gives no warning.',
    remedy: 'Use a decimal point, or put the value in quotes.',
    bad: [
      { says: 'a decimal comma', change: { 'shots/frost/field': '30,5 mm' } },
      {
        says: 'a colon without its space',
        change: { 'subjects/frost-plate': '{ kind: solid, depth:1.5 mm }' },
      },
    ],
    good: [{ says: 'in quotes', change: { 'shots/frost/about': '"Frost: the edge"' } }],
  },
  words: wordsFrom(
    {
      'decimal-comma': ({ text = '' }) => ({
        what: message`Write a decimal point in \`${text}\`, not a comma.`,
      }),
      'comma-in-braces': ({ text = '' }) => ({
        what: message`YAML ends the value at the comma in ${text ? `\`${text}\`` : message`this number`}.`,
        why: message`Write a decimal point.`,
      }),
      'hash-in-value': ({ text = '' }) => ({
        what: message`YAML reads the text after # as a comment: ${text}`,
        why: message`To keep it, put the value in quotes.`,
      }),
      'colon-in-value': ({ text = '', next }) => ({
        what: message`YAML reads the text before the colon as a key: ${text}`,
        why:
          next === undefined
            ? message`Put the value in quotes.`
            : message`If \`${next}\` is a key, put a comma before it. Otherwise put the value in quotes.`,
      }),
      'space-after-colon': ({ key = '', text = '' }) => ({
        what: message`\`${key}:${text}\` needs a space after the colon.`,
        why: message`Without it, YAML reads one word.`,
      }),
    },
    later`YAML reads this differently`,
  ),
};
