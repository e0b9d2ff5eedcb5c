import { later, message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';
import { type TextFacts, wordsFrom } from './text/text-rule.ts';

export const tooMuch: RuleCore<TextFacts> = {
  name: 'too-much',
  severity: 'warning',
  docs: {
    when: 'a budget was passed: a file over 4 MB, or more findings than an editor can show.',
    why: 'A text too large to be read in time would stop everything else; what was left out is said instead.',
    remedy: 'Split the plan, or ask the command line, which lists everything.',
    bad: [],
    good: [],
  },
  words: wordsFrom(
    {
      'file-too-large': ({ megabytes = '' }) => ({
        what: message`The file has ${megabytes} MB; files over 4 MB are not read.`,
      }),
    },
    later`A budget was passed`,
  ),
};
