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
    when: "a file can't be read as a clip: it is empty, incomplete, contains no video, or can't be opened.",
    why: 'A power or card failure, or an interrupted copy, leaves such files. While the card is intact, the clip can be copied again.',
    remedy:
      'Compare its size with the file on the card, copy it again and check again. A recovery program can sometimes repair an incomplete recording; work on a copy.',
    bad: [],
    good: [],
  },
  words: ({ file, why }) => ({
    what: message`The clip ${file} can't be read: ${inLanguage(why)}.`,
    why: message`Review it, or copy it again, before you format the card.`,
  }),
};
