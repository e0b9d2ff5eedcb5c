import { meant, type TextRule, wordsFrom } from './text-rule.ts';

export const unknownName: TextRule = {
  name: 'unknown-name',
  severity: 'error',
  docs: {
    when: 'a name refers to nothing in the plan or the files that it uses.',
    why: 'Entries are tied together by their names; one letter off and a shot has no rig.',
    remedy: 'Take the nearest name, or define the entry.',
    bad: [{ says: 'misspelt', change: { 'shots/frost/rig': 'bensh' } }],
    good: [{ says: 'as it is defined', change: { 'shots/frost/rig': 'bench' } }],
  },
  words: wordsFrom(
    {
      'unknown-name': ({ text = '', groups = '', nearest, names = '' }) => ({
        what: `No ${groups} is called ${text}.${meant(nearest)}`,
        ...(nearest === undefined && {
          why: names
            ? `There ${names.includes(',') ? 'are' : 'is'} ${names}.`
            : 'None is defined yet.',
        }),
      }),
    },
    'This name is not defined',
  ),
};
