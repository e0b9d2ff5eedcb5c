import { later, message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';
import { type TextFacts, wordsFrom } from './text/text-rule.ts';

export const tooMuch: RuleCore<TextFacts> = {
  name: 'too-much',
  severity: 'warning',
  docs: {
    when: 'a budget was passed: a file over 4 MB, which is an error, an entry too long or nested too deep, or more findings than an editor can show or fixes can be tried for.',
    why: 'A text too large to be read in time would stop everything else; what was left out is said instead.',
    remedy: 'Split the plan, or ask the command line, which lists everything.',
    bad: [],
    good: [],
  },
  words: wordsFrom(
    {
      'too-long': ({ length = '', limit = '' }) => ({
        what: message`This entry has ${length} characters; more than ${limit} are not read.`,
      }),
      'too-deep': ({ limit = '' }) => ({
        what: message`Nested deeper than ${limit} levels: not read.`,
      }),
      'too-many': ({ more = '' }) => ({
        what:
          more === '1'
            ? message`${more} more problem of this entry is not listed.`
            : message`${more} more problems of this entry are not listed.`,
      }),
    },
    later`A budget was passed`,
  ),
};
