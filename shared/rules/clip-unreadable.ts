import type { ClipFault } from '../clips/facts.ts';
import { inLanguage, message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  /** "it is empty" */
  readonly why: string;
  readonly fault: ClipFault | null;
}

export const clipUnreadable: RuleCore<Facts> = {
  name: 'clip-unreadable',
  severity: 'error',
  onRequest: true,
  docs: {
    when: "a file can't be read as a clip: it is empty, incomplete, contains no video, or can't be opened. A warning where its format or encoding is not supported.",
    why: 'A power or card failure, or an interrupted copy, leaves such files. While the card is intact, the clip can be copied again. Copying does not help where the format is not supported.',
    remedy:
      'Compare its size with the file on the card, copy it again and check again. A recovery program can sometimes repair an incomplete recording; work on a copy.',
    bad: [],
    good: [],
  },
  words: ({ file, why, fault }) => ({
    what: message`The clip ${file} can't be read: ${inLanguage(why)}.`,
    why:
      fault === 'unsupported'
        ? message`Nothing was compared. Copying it again won't help: review it in a player that supports it.`
        : fault === 'refused'
          ? message`Nothing was compared. Review it before you format the card.`
          : message`Review it, or copy it again, before you format the card.`,
  }),
};
