import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const misreadScalar: TextRule = {
  name: 'misread-scalar',
  severity: 'error',
  docs: {
    when: 'YAML silently reads something else than what was written: a decimal comma, a # or a colon inside a value, a colon without its space.',
    why: 'In `{ mass: 1,5 kg }` the comma ends the value and `5 kg` becomes a key; behind ` #` everything is a comment. Nothing warns.',
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
        what: message`Numbers take a decimal point, not the comma of ${text}.`,
      }),
      'comma-in-braces': ({ text = '' }) => ({
        what: message`The comma in ${text || message`this number`} ends the value; numbers take a decimal point.`,
      }),
      'hash-in-value': ({ text = '' }) => ({
        what: message`What follows the # is read as a comment: ${text}`,
        why: message`Put the value in quotes to keep it.`,
      }),
      'colon-in-value': ({ text = '', next }) => ({
        what: message`The colon makes a key of a part of this value: ${text}`,
        why:
          next === undefined
            ? message`Put the value in quotes.`
            : message`Put a comma before \`${next}\` if it is a key, else the value in quotes.`,
      }),
      'space-after-colon': ({ key = '', text = '' }) => ({
        what: message`Without a space after its colon \`${key}:${text}\` is one word.`,
      }),
    },
    later`YAML reads something else than what stands here`,
  ),
};
