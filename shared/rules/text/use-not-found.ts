import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const useNotFound: TextRule = {
  name: 'use-not-found',
  severity: 'error',
  docs: {
    when: "a file named by `use` can't be read: it was not found, is not text, is too large, or is outside the workspace.",
    why: 'The entries of that file are missing, so their names are unknown.',
    remedy: 'Correct the path, which is relative to this file, or move the file there.',
    bad: [{ says: "a file that doesn't exist", change: { use: '[no-such-kit.shootplan.yaml]' } }],
    good: [],
  },
  words: wordsFrom(
    {
      'not-found': ({ text = '' }) => ({ what: message`${text} was not found.` }),
      'outside-workspace': ({ text = '' }) => ({
        what: message`${text} is outside the workspace and is not read.`,
      }),
      'not-a-path': ({ text = '' }) => ({
        what: message`${text} is not a path relative to this file.`,
        why: message`Separate folders with slashes: ../kit/our-kit.shootplan.yaml.`,
      }),
      'too-large': ({ text = '' }) => ({
        what: message`${text} is larger than 4 MB and is not read.`,
      }),
      'not-text': ({ text = '' }) => ({ what: message`${text} is not UTF-8 text.` }),
      unreadable: ({ text = '' }) => ({ what: message`${text} can't be read.` }),
    },
    later`A used file can't be read`,
  ),
};
