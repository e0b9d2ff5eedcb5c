import type { Wording } from '../text/problem.ts';
import { later, message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';
import { wordsFrom } from './text/text-rule.ts';

export const tooMuch: RuleCore<Wording> = {
  name: 'too-much',
  severity: 'warning',
  docs: {
    when: 'an entry is too long or nested too deep; or there are too many findings to show or to try fixes for. A file over 4 MB is an error.',
    why: 'A file too large to read in time would stop everything else. A finding states what was left out.',
    remedy: 'Split the plan, or use the command line, which lists every finding.',
    bad: [],
    good: [],
  },
  words: wordsFrom(
    {
      'too-long': ({ length = '', limit = '' }) => ({
        what: message`This entry has ${length} characters; only ${limit} are read.`,
      }),
      'too-deep': ({ limit = '' }) => ({
        what: message`This is nested deeper than ${limit} levels and is not read.`,
      }),
      'too-many': ({ more = '' }) => ({
        what:
          more === '1'
            ? message`${more} more problem of this entry is not listed.`
            : message`${more} more problems of this entry are not listed.`,
      }),
    },
    later`A limit was exceeded`,
  ),
};
