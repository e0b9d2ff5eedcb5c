import { later, message } from '../../words/message.ts';
import { meant, type TextRule, wordsFrom } from './text-rule.ts';

export const unknownName: TextRule = {
  name: 'unknown-name',
  severity: 'error',
  docs: {
    when: 'a name is not defined in the plan or the files that it uses.',
    why: 'Entries refer to each other by name. One wrong letter, and a shot has no rig.',
    remedy: 'Use the nearest name, or define the entry.',
    bad: [{ says: 'misspelt', change: { 'shots/frost/rig': 'bensh' } }],
    good: [{ says: 'as it is defined', change: { 'shots/frost/rig': 'bench' } }],
  },
  words: wordsFrom(
    {
      'unknown-name': ({ text = '', groups = '', nearest, names = '' }) => ({
        what: message`No ${groups} is called ${text}.${meant(nearest)}`,
        ...(nearest === undefined && {
          why: names
            ? names.includes(',')
              ? message`Defined are ${names}.`
              : message`Only ${names} is defined.`
            : message`None is defined yet.`,
        }),
      }),
      'unknown-rule': ({ text = '', nearest }) => ({
        what: message`No rule is called ${text}.${meant(nearest)}`,
        ...(nearest === undefined && { why: message`\`lamella explain\` lists all of them.` }),
      }),
    },
    later`This name is not defined`,
  ),
};
