import { type TextRule, wordsFrom } from './text-rule.ts';

export const notReadYet: TextRule = {
  name: 'not-read-yet',
  severity: 'hint',
  docs: {
    when: 'a section of the language is written that this version does not work out.',
    why: 'What is written stays, and later versions read it; nothing in it is checked now.',
    remedy: 'Nothing: the hint only says what to expect.',
    bad: [{ says: 'an edit', change: { edit: '{ cuts: { opening: { shot: frost } } }' } }],
    good: [{ says: 'no edit', change: {} }],
  },
  words: wordsFrom(
    {
      section: ({ key = '' }) => ({ what: `\`${key}\` is kept as it is and not worked out yet.` }),
    },
    'This is not worked out yet',
  ),
};
