import type { Sight } from '../looked-at/judge.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly sight: Extract<Sight, { of: 'sound' }>;
}

export const clipSound: RuleCore<Facts> = {
  name: 'clip-sound',
  severity: 'note',
  onRequest: true,
  docs: {
    when: 'the sound of a clip is clipped, or silent throughout. Only a check that looks at the pictures finds this.',
    why: 'Three samples in a row at full scale are clipped, and count from 1 in 10,000. Silent is a peak under −60 dB of full scale (AES17): a microphone that is connected is louder than that.',
    remedy: 'Check the level and the microphone. Accept it where no sound is needed.',
    bad: [],
    good: [],
  },
  words: ({ file, sight: { clipped, isSilent } }, say) => ({
    what: isSilent
      ? message`${file}: its sound is silent throughout.`
      : message`${file}: ${say.percent(clipped)} of its sound is clipped.`,
  }),
  numbers: ({ sight: { clipped } }) => ({ soundClipped: clipped }),
};
