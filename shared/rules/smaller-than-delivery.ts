import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { chosenSetting, settingsOf } from './recording-settings.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

interface Facts {
  readonly setting: string;
  readonly recorded: readonly [width: number, height: number];
  readonly delivered: readonly [width: number, height: number];
}

export const smallerThanDelivery: ShotRule<Facts> = {
  name: 'smaller-than-delivery',
  severity: 'error',
  docs: {
    when: 'the recording mode has a lower resolution than the delivery.',
    why: "Pixels that weren't recorded can't be delivered. A low resolution left over from another day can cost a whole day of takes.",
    remedy:
      'Use a recording mode with at least the delivery resolution, and confirm it on the camera.',
    bad: [{ says: 'a low resolution left over', change: { 'shots/frost/record': 'small-25' } }],
    good: [{ says: 'the delivery resolution', change: { 'shots/frost/record': 'full-25' } }],
  },
  check({ bench }) {
    const { recordedPixels: recorded, deliveredPixels: delivered } = bench;
    if (!recorded.known || !delivered.known) return [];
    const { width, height } = recorded.value;
    if (width >= delivered.value.width && height >= delivered.value.height) return [];
    const at = bench.fields.record.at;
    return [
      {
        at,
        facts: {
          setting: bench.recording?.name ?? '',
          recorded: [width, height] as const,
          delivered: [delivered.value.width, delivered.value.height] as const,
        },
        related: [
          ...relatedTo(at, recorded),
          ...delivered.from.map((place) => ({
            at: place,
            words: message`\`resolution\` of the delivery`,
          })),
        ],
      },
    ];
  },
  words: ({ setting, recorded, delivered }) => ({
    what: message`${setting} records ${recorded.join(' × ')}; the delivery needs ${delivered.join(' × ')}.`,
    why: message`Pixels that aren't recorded can't be delivered.`,
  }),
  numbers: ({ recorded, delivered }) => ({
    recordedWidth: recorded[0],
    recordedHeight: recorded[1],
    deliveredWidth: delivered[0],
    deliveredHeight: delivered[1],
  }),
  fixes({ at, facts: { delivered } }, { bench }) {
    const chosen = chosenSetting(bench);
    const enough = settingsOf(bench)
      .filter(({ width, height }) => width >= delivered[0] && height >= delivered[1])
      .sort((a, b) => Number(b.rate === chosen?.rate) - Number(a.rate === chosen?.rate));
    return enough
      .slice(0, 2)
      .map(({ name, width, height, rate }) =>
        setTo(
          message`Record with ${name} (${width} × ${height}, ${Number(rate.toFixed(3))} fps)`,
          at,
          name,
        ),
      );
  },
};
