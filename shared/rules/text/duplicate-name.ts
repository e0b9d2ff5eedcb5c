import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const duplicateName: TextRule = {
  name: 'duplicate-name',
  severity: 'error',
  docs: {
    when: 'a key or name is used twice where it must be unique, in a plan or across the files that it uses.',
    why: 'Nobody can tell which of the two is meant. Lamella reads the first.',
    remedy: 'Rename or remove one of them.',
    bad: [
      {
        says: 'a key written twice',
        change: { 'subjects/frost-plate': '{ kind: solid, depth: 1.5 mm, kind: solid }' },
      },
    ],
    good: [
      { says: 'once each', change: { 'subjects/frost-plate': '{ kind: solid, depth: 1.5 mm }' } },
    ],
  },
  words: wordsFrom(
    {
      'duplicate-key': ({ key = '' }) => ({ what: message`\`${key}\` is repeated here.` }),
      'duplicate-entry': ({ key = '' }) => ({
        what: message`${key} is defined twice; only the first is read.`,
      }),
      'duplicate-part': ({ key = '' }) => ({
        what: message`${key} is already the name of another part.`,
        why: message`Parts of a rig need different names.`,
      }),
      'duplicate-clip': ({ key = '' }) => ({
        what: message`The clip ${key} is listed twice.`,
        why: message`A clip belongs to one shot and has one verdict.`,
      }),
      'duplicate-across': ({ key = '', file = '' }) => ({
        what: message`${key} is also defined in ${file}.`,
        why: message`Names must be unique in a plan and the files that it uses.`,
      }),
    },
    later`This is defined twice`,
  ),
};
