import { foldedCycles } from '../looked-at/flicker.ts';
import type { Sight } from '../looked-at/judge.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly sight: Extract<Sight, { of: 'flicker' }>;
}

export const clipFlickers: RuleCore<Facts> = {
  name: 'clip-flickers',
  severity: 'warning',
  onRequest: true,
  docs: {
    when: "the brightness of a clip pulses by more than 2% at the frequency of one of its shot's lamps. Only a check that looks at the pictures finds this.",
    why: 'A lamp of f hertz at r frames per second shows at |f − r·round(f/r)|. It is measured line by line, since a rolling shutter reads each line at another moment. Where that frequency is near 0 or half the frame rate, flicker and scene cannot be told apart, and nothing is reported. At least 64 frames are needed.',
    remedy: 'Use a shutter time of whole lamp cycles, or another lamp, and record it again.',
    bad: [],
    good: [],
  },
  words: ({ file, sight: { lampHz, depth, exposedFps } }, say) => ({
    what: message`${file}: flickers by ${say.percent(depth)}, as a lamp of ${say.number(lampHz)} Hz does.`,
    why: message`At ${say.number(exposedFps)} fps it shows ${say.number(seenHz(lampHz, exposedFps))} times a second.`,
  }),
  numbers: ({ sight: { lampHz, depth, exposedFps } }) => ({
    lampHz,
    depth,
    shownHz: seenHz(lampHz, exposedFps),
  }),
};

const seenHz = (lampHz: number, fps: number): number => foldedCycles(lampHz, fps) * fps;
