import { inLanguage, message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  /** "it is empty" */
  readonly why: string;
}

export const clipUnreadable: RuleCore<Facts> = {
  name: 'clip-unreadable',
  severity: 'error',
  onRequest: true,
  docs: {
    when: 'the clips are verified, and a file can’t be read as a clip: it is empty, cut off, no film, or not to be read.',
    why: 'A recording that lost its power or its card, or a copy that stopped half way, leaves such files; while the card is still there it can be copied again.',
    remedy:
      'Compare its size with the card’s, copy it again and verify again; a recording that was cut off can sometimes be mended by a recovery program, on a copy.',
    bad: [],
    good: [],
  },
  words: ({ file, why }) => ({
    what: message`The clip ${file} can’t be read: ${inLanguage(why)}.`,
    why: message`Look at it, or copy it again, before the card is formatted.`,
  }),
};
