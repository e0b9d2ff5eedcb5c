import type { Factor } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { cutsIn, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';
import { setTo } from './shot-rule.ts';

/** A row or column of pixels is no matter. */
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
    when: 'a cut is enlarged in the edit until the recorded pixels are fewer than the delivered ones.',
    why: 'What is recorded at 3840 for a film of 1920 can be enlarged to twice its size; beyond recorded over delivered, pixels are made up and the picture goes soft.',
    remedy: 'Enlarge less, frame closer in the shot, or record larger.',
    bad: [
      {
        says: 'enlarged without a pixel to spare',
        change: withCuts({
          one: 'shot: frost, duration: 4 s, reframe: 1.2x',
          two: 'shot: skin, duration: 4 s',
        }),
      },
    ],
    good: [
      {
        says: 'recorded larger than it is delivered',
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
      // What is smaller than the delivery as it is has a finding in its shot.
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
    what: message`${cut} is enlarged ${say.number(reframe)} times; ${shot} has pixels for ${say.number(headroom)}.`,
    why: message`It is recorded at ${recorded.join(' x ')} and delivered at ${delivered.join(' x ')}.`,
  }),
  size: ({ reframe, headroom }) => ({ kind: 'percent', value: reframe / headroom - 1 }),
  numbers: ({ reframe, headroom }) => ({ reframe, headroom }),
  fixes({ at, facts: { headroom } }) {
    const most = KINDS.factor.print((Math.floor(headroom * 100 + 1e-6) / 100) as Factor);
    return [
      {
        ...setTo(message`Enlarge ${most}`, at, most),
        sideEffects: message`the frame takes in more`,
      },
    ];
  },
};
