import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const usualSpelling: TextRule = {
  name: 'usual-spelling',
  severity: 'hint',
  docs: {
    when: 'a value is understood but not written the usual way.',
    why: 'One way to write a thing makes plans easy to read and to compare.',
    remedy: 'Take the usual spelling; nothing else changes.',
    bad: [{ says: 'no space before the unit', change: { 'shots/frost/field': '60mm' } }],
    good: [{ says: 'as usual', change: { 'shots/frost/field': '60 mm' } }],
  },
  words: wordsFrom(
    {
      'usual-spelling': ({ text = '', usual = '' }) => ({
        what: message`${text} is usually written ${usual}.`,
      }),
    },
    later`This is usually written otherwise`,
  ),
};
