import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly kept: boolean;
}

export const clipNotFound: RuleCore<Facts> = {
  name: 'clip-not-found',
  severity: 'error',
  onRequest: true,
  docs: {
    when: 'the clips are verified, and one that is kept, or not yet judged, isn’t there. Only `lamella verify` and the editor’s command look for it.',
    why: 'What was recorded once and is not on the disk is on a card that will be formatted for the next day. Common practice: no card is cleared before its clips are on two disks.',
    remedy:
      'Look for it on the cards, and copy it; or correct the path, which starts from the plan or from the folder given as `--media`.',
    bad: [],
    good: [],
  },
  words: ({ file, kept }) => ({
    what: message`The clip ${file} is not there.`,
    why: kept
      ? message`The plan keeps it: don’t format the cards before it is found.`
      : message`Don’t format the cards before it is found.`,
  }),
};
