import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const usualSpelling: TextRule = {
  name: 'usual-spelling',
  severity: 'hint',
  docs: {
    when: 'a value is understood but not in the usual spelling.',
    why: 'One spelling makes plans easy to read and compare.',
    remedy: 'Use the usual spelling; nothing else changes.',
    bad: [{ says: 'no space before the unit', change: { 'shots/frost/field': '60mm' } }],
    good: [{ says: 'as usual', change: { 'shots/frost/field': '60 mm' } }],
  },
  words: wordsFrom(
    {
      'usual-spelling': ({ text = '', usual = '' }) => ({
        what: message`The usual spelling of ${text} is ${usual}.`,
      }),
    },
    later`This is not the usual spelling`,
  ),
};
