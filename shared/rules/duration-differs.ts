import { setTo } from '../plan/fixes.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { fromRational, fromWritten, times, toNumber } from '../timeline/exact.ts';
import { message } from '../words/message.ts';
import { frames, framesText, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';

/** Rounding cuts to frames moves an end by half a frame. */
const MOST_FRAMES = 1;

interface Facts {
  readonly totalS: number;
  readonly wantedS: number;
  /** Positive: the edit is too long. */
  readonly offFrames: number;
  readonly last: string;
  readonly lastFrames: number;
}

export const durationDiffers: PlanRule<Facts> = {
  name: 'duration-differs',
  severity: 'warning',
  docs: {
    when: 'the running time of the edit differs from the delivery length by more than one frame.',
    why: 'A loop, a slot in a programme or a piece of music has a fixed length. An edit that misses it has to be cut again.',
    remedy: 'Lengthen or shorten a cut, or change the delivery length.',
    bad: [
      {
        says: 'two seconds short',
        change: {
          'deliver/duration': '10 s',
          ...withCuts({ one: 'shot: frost, duration: 4 s', two: 'shot: skin, duration: 4 s' }),
        },
      },
    ],
    good: [
      {
        says: 'cuts that add up',
        change: {
          'deliver/duration': '8 s',
          ...withCuts({ one: 'shot: frost, duration: 4 s', two: 'shot: skin, duration: 4 s' }),
        },
      },
    ],
  },
  check({ edit }) {
    const deliver = edit?.plan.deliver;
    if (!edit?.totalFrames.known || !edit.rate.known || deliver?.state !== 'known') return [];
    const { duration } = deliver.value;
    const last = edit.cuts.at(-1)!;
    if (duration.state !== 'known' || !last.track.known) return [];
    const rate = fromRational(edit.rate.value);
    const offFrames = edit.totalFrames.value - toNumber(times(fromWritten(duration.value), rate));
    if (Math.abs(offFrames) <= MOST_FRAMES) return [];
    const { startFrame, endFrame } = last.track.value;
    return [
      {
        at: duration.at,
        facts: {
          totalS: edit.totalFrames.value / toNumber(rate),
          wantedS: duration.value,
          offFrames,
          last: last.name,
          lastFrames: endFrame - startFrame,
        },
        related: [
          { at: { ...last.at, part: 'key' as const }, words: message`${last.name}, the last cut` },
        ],
      },
    ];
  },
  words: ({ totalS, wantedS, offFrames }, say) => ({
    what:
      offFrames > 0
        ? message`The edit is ${frames(Math.abs(offFrames))} longer than the delivery length.`
        : message`The edit is ${frames(Math.abs(offFrames))} shorter than the delivery length.`,
    why: message`Its running time is ${say.number(totalS)} s; the delivery length is ${say.number(wantedS)} s.`,
  }),
  size: ({ totalS, wantedS }) => ({ kind: 'time', value: Math.abs(totalS - wantedS) }),
  numbers: ({ totalS, wantedS, offFrames }) => ({ totalS, wantedS, offFrames }),
  fixes({ at, facts: { totalS, offFrames, last, lastFrames } }, { edit }) {
    const wanted = Math.round(lastFrames - offFrames);
    const field = edit?.cuts.at(-1)?.fields?.duration;
    const delivered = KINDS.time.print(totalS as Sec);
    return [
      ...(field && wanted >= 1
        ? [
            setTo(
              offFrames > 0
                ? message`Shorten ${last} to ${framesText(wanted)}`
                : message`Lengthen ${last} to ${framesText(wanted)}`,
              field.at,
              framesText(wanted),
              offFrames > 0
                ? message`${last} uses less footage`
                : message`${last} uses more footage`,
            ),
          ]
        : []),
      setTo(
        message`Set the delivery length to ${delivered}`,
        at,
        delivered,
        message`the delivery length changes`,
      ),
    ];
  },
};
