import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const duplicateName: TextRule = {
  name: 'duplicate-name',
  severity: 'error',
  docs: {
    when: 'a key or name stands twice where it may stand once, in a plan or across the files that it uses.',
    why: 'Which of the two is meant nobody can tell; the first is the one that is read.',
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
      'duplicate-key': ({ key = '' }) => ({ what: message`\`${key}\` stands here a second time.` }),
      'duplicate-entry': ({ key = '' }) => ({
        what: message`${key} is defined a second time; the first one is read.`,
      }),
      'duplicate-part': ({ key = '' }) => ({
        what: message`${key} is the name of another part already.`,
        why: message`A rig tells its parts apart by name alone.`,
      }),
      'duplicate-clip': ({ key = '' }) => ({
        what: message`The clip ${key} is listed a second time.`,
        why: message`One recording is of one shot, and has one verdict.`,
      }),
      'duplicate-across': ({ key = '', file = '' }) => ({
        what: message`${key} is defined in ${file} too.`,
        why: message`Names are unique in a plan and the files that it uses.`,
      }),
    },
    later`This stands a second time`,
  ),
};
