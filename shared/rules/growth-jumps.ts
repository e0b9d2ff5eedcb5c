import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { AT_INTERVALS, intervalDown, printTime } from './fewer-frames.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** The shortest time in which something may cross the width of the frame before it jerks, s. */
const SHORTEST_CROSSING_S = 7;
/** Accuracy of a rate of growth, at best. */
const DEAD_BAND = 0.05;

interface Facts {
  readonly crossingS: number;
  readonly intervalS: number;
  /** null: not known. */
  readonly growthPx: number | null;
}

export const growthJumps: ShotRule<Facts> = {
  name: 'growth-jumps',
  severity: 'warning',
  docs: {
    when: 'a time-lapse moves its subject so far between frames that it crosses the finished frame in less than 7 seconds.',
    why: 'Each frame is sharp, so a large step from one to the next is seen as a jump. The step is speed × interval. Seven seconds across the width of the frame is the old rule for pans at 24 and 25 frames per second (common practice).',
    remedy:
      'Shorten the interval, which needs more frames, or frame wider. Blend frames in the edit where neither works.',
    bad: [
      {
        says: 'frost that grows too fast for its interval',
        change: { ...AT_INTERVALS, 'shots/frost/subject-speed': '2 mm/min' },
      },
    ],
    good: [
      {
        says: 'a slower one',
        change: { ...AT_INTERVALS, 'shots/frost/subject-speed': '20 mm/h' },
      },
    ],
  },
  check({ bench, figures }) {
    const { growthCrossingS: crossingS, growthPx } = figures;
    const { timeLapse, fields } = bench;
    if (!crossingS.known || !timeLapse?.intervalS.known) return [];
    if (crossingS.value >= SHORTEST_CROSSING_S * (1 - DEAD_BAND)) return [];
    const at = below(fields['time-lapse'].at, 'interval');
    return [
      {
        at,
        facts: {
          crossingS: crossingS.value,
          intervalS: timeLapse.intervalS.value,
          growthPx: growthPx.known ? growthPx.value : null,
        },
        related: () => relatedTo(at, crossingS),
      },
    ];
  },
  words: ({ crossingS, growthPx }, say) => ({
    what: message`The growth crosses the frame in ${say.seconds(crossingS)}; under ${say.seconds(SHORTEST_CROSSING_S)} it jumps.`,
    ...(growthPx !== null && {
      why: message`It moves ${say.pixels(growthPx)} from one frame to the next, and each frame is sharp.`,
    }),
  }),
  size: ({ crossingS }) => ({ kind: 'percent', value: SHORTEST_CROSSING_S / crossingS - 1 }),
  numbers: ({ crossingS, intervalS, growthPx }) => ({
    crossingS,
    intervalS,
    ...(growthPx !== null && { growthPx }),
  }),
  fixes({ at, facts: { crossingS, intervalS } }) {
    const shorter = intervalDown((intervalS * crossingS) / SHORTEST_CROSSING_S);
    if (!(shorter > 0)) return [];
    const text = printTime(shorter);
    return [setTo(message`Shorten the interval to ${text}`, at, text)];
  },
};
