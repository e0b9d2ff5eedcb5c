import { isLongerThanFrame } from '../exposure/shutter.ts';
import { setTo } from '../plan/fixes.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

interface Facts {
  readonly seconds: number;
  readonly rate: number;
}

export const shutterTooSlow: ShotRule<Facts> = {
  name: 'shutter-too-slow',
  severity: 'error',
  docs: {
    when: 'the shutter is open longer than one frame lasts.',
    why: "A frame at 50 fps lasts 1/50 s, so a longer exposure can't be recorded at that frame rate. A camera set to one drops to a lower frame rate without warning.",
    remedy: 'Use a shutter no slower than one frame, or record at a lower frame rate.',
    bad: [
      {
        says: 'longer than a frame at 25 fps',
        change: { 'shots/frost/shutter': '1/15 s', 'shots/frost/iso': 'auto' },
      },
    ],
    good: [
      {
        says: 'a whole frame',
        change: { 'shots/frost/shutter': '1/25 s', 'shots/frost/iso': 'auto' },
      },
    ],
  },
  check({ bench, figures }) {
    const { shutterSeconds } = figures;
    const rate = bench.recordRate;
    // A frame of a time-lapse may last as long as its interval.
    if (bench.timeLapse || !shutterSeconds.known || !rate.known) return [];
    if (!isLongerThanFrame(shutterSeconds.value, rate.value)) return [];
    const at = bench.fields.shutter.at;
    return [
      {
        at,
        facts: { seconds: shutterSeconds.value, rate: rate.value },
        related: () => relatedTo(at, rate),
      },
    ];
  },
  words: ({ seconds, rate }, say) => ({
    what: message`A ${say.shutter(seconds)} shutter is longer than one frame at ${say.number(rate)} fps.`,
    why: message`The longest possible shutter is ${say.shutter(1 / rate)} (360°).`,
  }),
  numbers: ({ seconds, rate }) => ({ shutterSeconds: seconds, rate }),
  fixes({ at, facts: { rate } }) {
    const text = KINDS.shutter.print({ kind: 'time', seconds: (1 / Math.ceil(rate)) as Sec });
    return [setTo(message`Set shutter to ${text}`, at, text)];
  },
};
