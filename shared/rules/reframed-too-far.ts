import { setTo } from '../plan/fixes.ts';
import type { Factor } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { cutsIn, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

/** One row or column of pixels doesn't matter. */
const DEAD_BAND = 1.005;

interface Facts {
  readonly cut: string;
  readonly shot: string;
  readonly reframe: number;
  readonly headroom: number;
  readonly recorded: readonly [width: number, height: number];
  readonly delivered: readonly [width: number, height: number];
}

const LARGE = '{ resolution: 3840 x 2160, rate: 25 fps, bitrate: 100 Mb/s, area: 36 x 20.25 mm }';

export const reframedTooFar: PlanRule<Facts> = {
  name: 'reframed-too-far',
  severity: 'warning',
  docs: {
    when: 'a cut is scaled up in the edit beyond its recorded resolution.',
    why: 'A recording 3840 pixels wide can be scaled to 2x in an edit of 1920. Above recorded ÷ delivered resolution, pixels are interpolated and the image turns soft.',
    remedy: 'Scale less, frame tighter in the shot, or record at a higher resolution.',
    bad: [
      {
        says: 'scaled up without spare resolution',
        change: withCuts({
          one: 'shot: frost, duration: 4 s, reframe: 1.2x',
          two: 'shot: skin, duration: 4 s',
        }),
      },
    ],
    good: [
      {
        says: 'recorded at a higher resolution than delivered',
        change: {
          'kit/bodies/body-a/recording-modes/large-25': LARGE,
          'shots/frost/record': 'large-25',
          ...withCuts({ one: 'shot: frost, duration: 4 s, reframe: 1.2x' }),
        },
      },
    ],
  },
  check: (view) =>
    cutsIn(view).flatMap(({ edit, cut }): Observation<Facts>[] => {
      const { deliver } = edit.plan;
      const setting = cut.footage?.setting;
      const reframe = cut.fields?.reframe;
      if (!setting || reframe?.state !== 'known' || deliver.state !== 'known') return [];
      const { resolution: size } = deliver.value;
      if (size.state !== 'known') return [];
      const { width, height } = size.value;
      const headroom = Math.min(setting.width / width, setting.height / height);
      // A recording smaller than the delivery has a finding in its shot.
      if (headroom < 1 || reframe.value <= headroom * DEAD_BAND) return [];
      return [
        {
          at: reframe.at,
          facts: {
            cut: cut.name,
            shot: cut.footage?.shot ?? '',
            reframe: reframe.value,
            headroom,
            recorded: [setting.width, setting.height],
            delivered: [width, height],
          },
          related: [
            { at: cut.footage!.recordAt, words: message`\`record\` of ${cut.footage!.shot}` },
          ],
        },
      ];
    }),
  words: ({ cut, shot, reframe, headroom, recorded, delivered }, say) => ({
    what: message`${cut} is scaled to ${say.number(reframe)}x; ${shot} has enough resolution for ${say.number(headroom)}x.`,
    why: message`It is recorded at ${recorded.join(' × ')} and delivered at ${delivered.join(' × ')}.`,
  }),
  size: ({ reframe, headroom }) => ({ kind: 'percent', value: reframe / headroom - 1 }),
  numbers: ({ reframe, headroom }) => ({ reframe, headroom }),
  fixes({ at, facts: { headroom } }) {
    const most = KINDS.factor.print((Math.floor(headroom * 100 + 1e-6) / 100) as Factor);
    return [setTo(message`Scale to ${most}`, at, most, message`wider framing`)];
  },
};
