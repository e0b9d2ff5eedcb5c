import type { Drift } from '../looked-at/judge.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts extends Drift {
  readonly file: string;
  /** The take that it is compared with. */
  readonly other: string;
}

export const clipDrifts: RuleCore<Facts> = {
  name: 'clip-drifts',
  severity: 'note',
  onRequest: true,
  docs: {
    when: 'two takes of a shot differ by more than 1/3 stop in mean exposure, or 0.15 stops in red or blue over green. Clips whose cuts name the same `grade` are compared too. Only a check that looks at the pictures finds this.',
    why: 'What shares a grade gets one correction, so a difference shows at the cut. The mean over all frames is compared, by the transfer function of ITU-R BT.709, so a moved subject counts too.',
    remedy: 'Check for automatic exposure or white balance, and for lamps that warm up.',
    bad: [],
    good: [],
  },
  words: ({ file, other, stops, red, blue }, say) => ({
    what: message`${file}: ${say.stopsSigned(stops)} in exposure against ${other}.`,
    why: message`Red ${say.stopsSigned(red)}, blue ${say.stopsSigned(blue)} over green.`,
  }),
  numbers: ({ stops, red, blue }) => ({ stops, redStops: red, blueStops: blue }),
};
