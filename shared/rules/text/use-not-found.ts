import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const useNotFound: TextRule = {
  name: 'use-not-found',
  severity: 'error',
  docs: {
    when: 'a file named by `use` can’t be read: it isn’t there, is no text, is too large, or lies outside the workspace.',
    why: 'What it would bring in is missing, so names that stand in it are not known.',
    remedy: 'Mend the path, which is relative to this file, or put the file where it says.',
    bad: [{ says: 'a file that isn’t there', change: { use: '[no-such-kit.shootplan.yaml]' } }],
    good: [],
  },
  words: wordsFrom(
    {
      'not-found': ({ text = '' }) => ({ what: message`${text} isn’t there.` }),
      'outside-workspace': ({ text = '' }) => ({
        what: message`${text} lies outside the workspace and is not read.`,
      }),
      'not-a-path': ({ text = '' }) => ({
        what: message`${text} is no path relative to this file.`,
        why: message`Steps are parted by slashes: ../kit/our-kit.shootplan.yaml.`,
      }),
      'too-large': ({ text = '' }) => ({
        what: message`${text} has more than 4 MB and is not read.`,
      }),
      'not-text': ({ text = '' }) => ({ what: message`${text} is not UTF-8 text.` }),
      unreadable: ({ text = '' }) => ({ what: message`${text} can’t be read.` }),
    },
    later`A used file can’t be read`,
  ),
};
