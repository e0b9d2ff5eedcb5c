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
    when: 'a clip marked `keep`, or without a verdict, was not found. Only `lamella clips` and the command of the editor look for clips.',
    why: 'A clip that is not on the disk may still be on a card that will be formatted for the next day. Format no card before its clips are on two disks.',
    remedy:
      'Look for it on the cards and copy it. Or correct the path, which starts from the plan or the `--media` folder.',
    bad: [],
    good: [],
  },
  words: ({ file, kept }) => ({
    what: message`The clip ${file} was not found.`,
    why: kept
      ? message`It is marked \`keep\`: don't format the cards until it is found.`
      : message`Don't format the cards until it is found.`,
  }),
};
