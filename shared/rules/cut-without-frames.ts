import { setTo } from '../plan/fixes.ts';
import { toNumber } from '../timeline/exact.ts';
import { message } from '../words/message.ts';
import { cutsIn, framesText, rateText, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  readonly cut: string;
  /** As written, before its ends are laid on whole frames. */
  readonly lengthS: number;
  readonly rate: string;
  readonly rateFps: number;
}

export const cutWithoutFrames: PlanRule<Facts> = {
  name: 'cut-without-frames',
  severity: 'warning',
  docs: {
    when: 'a cut is so short that it shows no frame at the delivery frame rate.',
    why: 'Each cut starts and ends on the nearest frame. A cut whose start and end fall on the same frame is never seen, and an exported timeline leaves it out.',
    remedy: 'Lengthen the cut to at least one frame, or remove it.',
    bad: [
      {
        says: 'a cut of a hundredth of a second',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 0.01 s',
          three: 'shot: frost, from: 8 s, duration: 4 s',
        }),
      },
    ],
    good: [
      {
        says: 'a cut of one frame',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 1 frame',
          three: 'shot: frost, from: 8 s, duration: 4 s',
        }),
      },
    ],
  },
  check: (view) =>
    cutsIn(view).flatMap(({ edit, cut }): Observation<Facts>[] => {
      const { track, lengthS, fields } = cut;
      if (!edit.rate.known || !track.known || !lengthS.known) return [];
      if (track.value.endFrame > track.value.startFrame || fields!.duration.state !== 'known')
        return [];
      return [
        {
          at: fields!.duration.at,
          facts: {
            cut: cut.name,
            lengthS: toNumber(lengthS.value),
            rate: rateText(edit.rate.value),
            rateFps: edit.rate.value.n / edit.rate.value.d,
          },
        },
      ];
    }),
  words: ({ cut, lengthS, rate, rateFps }, say) => ({
    what: message`${cut} is ${say.number(lengthS)} s long and shows no frame at ${rate}.`,
    why: message`One frame lasts ${say.number(1 / rateFps)} s.`,
  }),
  numbers: ({ lengthS, rateFps }) => ({ lengthS, rateFps }),
  fixes({ at, facts: { cut } }) {
    // From any place on the track to the next frame and no further.
    const text = framesText(1);
    return [setTo(message`Set ${cut} to ${text}`, at, text, message`later cuts move`)];
  },
};
