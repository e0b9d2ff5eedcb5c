import { isLongerThanFrame } from '../exposure/shutter.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

interface Facts {
  readonly seconds: number;
  readonly rate: number;
}

export const shutterTooSlow: ShotRule<Facts> = {
  name: 'shutter-too-slow',
  severity: 'error',
  docs: {
    when: 'the shutter is open longer than one frame lasts.',
    why: 'A frame at 50 fps lasts 1/50 s; a longer exposure can’t be recorded at that rate, and a body set so drops to a slower one without saying.',
    remedy: 'Shorten the shutter to the frame’s duration or less, or record at a slower rate.',
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
    if (!shutterSeconds.known || !rate.known) return [];
    if (!isLongerThanFrame(shutterSeconds.value, rate.value)) return [];
    const at = bench.fields.shutter.at;
    return [
      {
        at,
        facts: { seconds: shutterSeconds.value, rate: rate.value },
        related: relatedTo(at, rate),
      },
    ];
  },
  words: ({ seconds, rate }, say) => ({
    what: message`${say.shutter(seconds)} is longer than a frame at ${say.number(rate)} fps lasts.`,
    why: message`Each frame has ${say.shutter(1 / rate)}.`,
  }),
  numbers: ({ seconds, rate }) => ({ shutterSeconds: seconds, rate }),
  fixes({ at, facts: { rate } }) {
    const text = KINDS.shutter.print({ kind: 'time', seconds: (1 / Math.ceil(rate)) as Sec });
    return [setTo(message`Shutter ${text}`, at, text)];
  },
};
