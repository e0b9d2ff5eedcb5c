import type { Bench } from '../figures/bench.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { chosenSetting, settingsOf } from './recording-settings.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Below this few people notice; our advice. */
const SEEN = 0.03;

interface Facts {
  readonly breathing: number;
  /** How many times larger than the delivery the recording is. */
  readonly headroom: number;
}

export const focusBreathes: ShotRule<Facts> = {
  name: 'focus-breathes',
  severity: 'note',
  docs: {
    when: 'focus breathing is above 3% over a focus pull, and the recording has too few pixels to even it out in the edit.',
    why: 'Turning the focus ring changes the magnification, most of all close up. The edit can keep the size by enlarging the wider end. That needs as many more pixels than the delivery has, or it softens the picture.',
    remedy:
      'Record larger than the delivery, pull less far, or use the breathing in the composition and accept the finding.',
    bad: [
      {
        says: 'a long pull, recorded as large as it is delivered',
        change: {
          'kit/bodies/body-a/recording-modes/large-25':
            '{ resolution: 2560 x 1440, rate: 25 fps, bitrate: 20 Mb/s, area: 36 x 20.25 mm }',
          'shots/frost/move': '{ kind: focus-pull, from: 0.38 m, to: 0.43 m, duration: 10 s }',
          'preflight/once/focus-ends-marked': 'open',
        },
      },
    ],
    good: [
      {
        says: 'a short pull',
        change: {
          'shots/frost/move': '{ kind: focus-pull, from: 0.38 m, to: 0.382 m, duration: 10 s }',
          'preflight/once/focus-ends-marked': 'open',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { pullBreathing: breathing } = figures;
    const headroom = headroomOf(bench);
    if (!breathing.known || headroom === null || breathing.value <= SEEN) return [];
    if (headroom >= 1 + breathing.value) return [];
    const { at } = bench.fields.move;
    return [
      {
        at: { ...at, part: 'key' },
        facts: { breathing: breathing.value, headroom },
        related: () => relatedTo(at, breathing),
      },
    ];
  },
  words: ({ breathing, headroom }, say) => ({
    what: message`Focus breathing is ${say.percent(breathing)}, more than the edit can even out.`,
    why:
      headroom > 1
        ? message`The recording is ${say.percent(headroom - 1)} larger than the delivery.`
        : message`The recording is no larger than the delivery.`,
  }),
  size: ({ breathing }) => ({ kind: 'percent', value: breathing }),
  numbers: ({ breathing, headroom }) => ({ breathing, headroom }),
  fixes({ facts: { breathing } }, { bench }) {
    const delivered = bench.deliveredPixels;
    const chosen = chosenSetting(bench);
    if (!delivered.known || !chosen || ifKnown(bench.fields.record) === undefined) return [];
    const least = 1 + breathing;
    return settingsOf(bench)
      .filter(
        ({ width, height, areaWidth, rate }) =>
          areaWidth === chosen.areaWidth &&
          rate === chosen.rate &&
          width >= delivered.value.width * least &&
          height >= delivered.value.height * least,
      )
      .slice(0, 2)
      .map(({ name }) => setTo(message`Record with ${name}`, bench.fields.record.at, name));
  },
};

/** null: not known. */
function headroomOf({ recordedPixels, deliveredPixels }: Bench): number | null {
  if (!recordedPixels.known || !deliveredPixels.known) return null;
  const [recorded, delivered] = [recordedPixels.value, deliveredPixels.value];
  return Math.min(recorded.width / delivered.width, recorded.height / delivered.height);
}
