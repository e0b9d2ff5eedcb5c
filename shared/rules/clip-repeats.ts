import type { Sight } from '../looked-at/judge.ts';
import { message } from '../words/message.ts';
import type { RuleCore } from './rule.ts';

interface Facts {
  readonly file: string;
  readonly sight: Extract<Sight, { of: 'repeats' }>;
  /** That the clip plays at; null: it changes, or isn't known. */
  readonly fps: number | null;
}

/** More places than that are counted, and not told one by one. */
const MOST_PLACES = 3;

export const clipRepeats: RuleCore<Facts> = {
  name: 'clip-repeats',
  severity: 'error',
  onRequest: true,
  docs: {
    when: 'frames of a clip repeat the frame before, while the frames around them change. Also when all frames of a clip are the same. Only a check that looks at the pictures finds this.',
    why: 'A camera or card that was too slow, or a conversion, fills gaps with the last frame. Motion then stops for a moment. A frame counts as repeated where it differs from the last one by less than 8% of the usual difference around it.',
    remedy: 'Record it again, with a faster card or a lower bit rate.',
    bad: [],
    good: [],
  },
  words({ file, sight: { repeats, isFrozen }, fps }, say) {
    if (isFrozen) return { what: message`${file}: all frames are the same.` };
    const total = repeats.reduce((sum, { count }) => sum + count, 0);
    const place = (frame: number): string =>
      fps === null
        ? message`frame ${frame}`
        : message`frame ${frame} (${say.seconds(frame / fps)})`;
    const places = repeats
      .slice(0, MOST_PLACES)
      .map(({ frame, count }) => message`${count} from ${place(frame)} on`);
    const more = repeats.length - places.length;
    return {
      what:
        total === 1
          ? message`${file}: ${total} frame repeats the one before.`
          : message`${file}: ${total} frames repeat the one before.`,
      why: [...places, ...(more > 0 ? [message`more in ${more} other places`] : [])].join(', '),
    };
  },
  numbers: ({ sight: { repeats } }) => ({
    repeatedFrames: repeats.reduce((sum, { count }) => sum + count, 0),
    ...(repeats[0] && { firstRepeatedFrame: repeats[0].frame }),
  }),
};
