import { message } from '../words/message.ts';
import { at50, rateText, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';

/**
 * In our tests, a machine with 12 GB did not play 1920 × 1080 at 50 fps smoothly. The memory needed is
 * assumed to grow with pixels per second.
 */
const KNOWN_TO_FAIL = { bytes: 12e9, pixelsPerS: 1920 * 1080 * 50 };

interface Facts {
  readonly memoryBytes: number;
  readonly shot: string;
  readonly width: number;
  readonly height: number;
  readonly rate: string;
  readonly pixelsPerS: number;
}

export const proxyAdvised: PlanRule<Facts> = {
  name: 'proxy-advised',
  severity: 'note',
  docs: {
    when: 'the editing computer has 12 GB of memory or less for 1920 × 1080 at 50 fps, or for as many pixels per second.',
    why: 'A computer with 12 GB did not play 1920 × 1080 at 50 fps smoothly. Quarter-size playback did not help; proxies did. Lamella assumes that the need grows with pixels per second.',
    remedy:
      'Edit with proxies, small copies of the clips, and switch back to the originals before exporting.',
    bad: [
      {
        says: '50 fps on 12 GB',
        change: {
          ...at50('frost', 'skin'),
          ...withCuts(
            { one: 'shot: frost, duration: 4 s', two: 'shot: skin, duration: 4 s' },
            'memory: 12 GB, ',
          ),
        },
      },
    ],
    good: [
      {
        says: '25 fps on 16 GB',
        change: withCuts({ one: 'shot: frost, duration: 4 s' }, 'memory: 16 GB, '),
      },
    ],
  },
  check({ edit }) {
    const memory = edit?.plan.memory;
    if (!edit || memory?.state !== 'known') return [];
    const cut = edit.cuts.flatMap(({ footage }) =>
      footage?.setting && !footage.isHeld ? [{ shot: footage.shot, ...footage.setting }] : [],
    );
    const heaviest = cut
      .map((one) => ({ ...one, pixelsPerS: (one.width * one.height * one.rate.n) / one.rate.d }))
      .reduce<Facts | null>((most, { shot, width, height, rate, pixelsPerS }) => {
        if (most && most.pixelsPerS >= pixelsPerS) return most;
        return {
          memoryBytes: memory.value,
          shot,
          width,
          height,
          rate: rateText(rate),
          pixelsPerS,
        };
      }, null);
    if (!heaviest) return [];
    const share =
      heaviest.pixelsPerS / KNOWN_TO_FAIL.pixelsPerS / (memory.value / KNOWN_TO_FAIL.bytes);
    return share < 1 ? [] : [{ at: memory.at, facts: heaviest }];
  },
  words: ({ memoryBytes, shot, width, height, rate }, say) => ({
    what: message`${say.bytes(memoryBytes)} of memory may not be enough to edit ${width} × ${height} at ${rate} (${shot}).`,
    why: message`Edit with proxies, small copies of the clips, and switch back to the originals before exporting.`,
  }),
  numbers: ({ memoryBytes, pixelsPerS }) => ({ memoryBytes, pixelsPerS }),
};
