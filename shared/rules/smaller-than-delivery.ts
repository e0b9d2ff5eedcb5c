import type { Bench } from '../figures/bench.ts';
import { isOfStills } from '../figures/stills.ts';
import { idOf } from '../plan/entry-id.ts';
import { setTo } from '../plan/fixes.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { withCuts } from './edit-rule.ts';
import { chosenSetting, settingsOf } from './recording-settings.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

interface Facts {
  readonly setting: string;
  readonly recorded: readonly [width: number, height: number];
  readonly delivered: readonly [width: number, height: number];
  /** The cuts that enlarge it as they say, and how much at most; null: it isn't meant. */
  readonly meant: { readonly cuts: readonly string[]; readonly enlarged: number } | null;
}

export const smallerThanDelivery: ShotRule<Facts> = {
  name: 'smaller-than-delivery',
  severity: 'error',
  docs: {
    when: 'the recording mode has a lower resolution than the delivery. A note where every cut of the shot says its `reframe`: then the smaller mode is meant.',
    why: "Pixels that weren't recorded can't be delivered. A low resolution left over from another day can cost a whole day of takes. High frame rates are often recorded small on purpose and enlarged in the edit, which softens the picture.",
    remedy:
      'Use a recording mode with at least the delivery resolution, and confirm it on the camera. Where the smaller mode is meant, write `reframe: 1x` (the whole picture) or more in its cuts.',
    bad: [
      { says: 'a low resolution left over', change: { 'shots/frost/record': 'small-25' } },
      {
        says: 'a smaller mode that the cut says it enlarges',
        change: {
          'shots/frost/record': 'small-25',
          ...withCuts({
            one: 'shot: frost, duration: 4 s, reframe: 1x',
            two: 'shot: skin, duration: 4 s',
          }),
          'shots/frost/take': '{ duration: 20 s }',
        },
      },
    ],
    good: [{ says: 'the delivery resolution', change: { 'shots/frost/record': 'full-25' } }],
  },
  check({ bench }) {
    const { recordedPixels: recorded, deliveredPixels: delivered } = bench;
    if (!recorded.known || !delivered.known) return [];
    const { width, height } = recorded.value;
    if (width >= delivered.value.width && height >= delivered.value.height) return [];
    const isStills = isOfStills(bench);
    const { timeLapse, stack, fields } = bench;
    const at = !isStills
      ? fields.record.at
      : timeLapse
        ? fields['time-lapse'].at
        : (stack?.at ?? fields.record.at);
    const headroom = Math.min(width / delivered.value.width, height / delivered.value.height);
    const meant = meantBy(bench, headroom);
    return [
      {
        at,
        ...(meant && { severity: 'note' as const }),
        facts: {
          setting: isStills ? message`a still` : (bench.recording?.name ?? ''),
          recorded: [width, height] as const,
          delivered: [delivered.value.width, delivered.value.height] as const,
          meant,
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
  words: ({ setting, recorded, delivered, meant }, say) => ({
    what: meant
      ? message`${setting} records ${recorded.join(' × ')}, enlarged on purpose to ${delivered.join(' × ')}.`
      : message`${setting} records ${recorded.join(' × ')}; the delivery needs ${delivered.join(' × ')}.`,
    why: meant
      ? meant.cuts.length === 1
        ? message`\`${meant.cuts.join()}\` enlarges it ${say.number(meant.enlarged)}x, so fine detail is softer.`
        : message`${meant.cuts.length} cuts enlarge it up to ${say.number(meant.enlarged)}x, so fine detail is softer.`
      : message`Pixels that aren't recorded can't be delivered.`,
  }),
  numbers: ({ recorded, delivered, meant }) => ({
    ...(meant && { enlarged: meant.enlarged }),
    recordedWidth: recorded[0],
    recordedHeight: recorded[1],
    deliveredWidth: delivered[0],
    deliveredHeight: delivered[1],
  }),
  fixes({ at, facts }, { bench }) {
    const { delivered, meant } = facts;
    if (meant) return [];
    const onPurpose = enlargedIn(bench, facts);
    if (isOfStills(bench)) return onPurpose;
    const chosen = chosenSetting(bench);
    const enough = settingsOf(bench)
      .filter(({ width, height }) => width >= delivered[0] && height >= delivered[1])
      .sort((a, b) => Number(b.rate === chosen?.rate) - Number(a.rate === chosen?.rate));
    return [
      ...enough
        .slice(0, 2)
        .map(({ name, width, height, rate }) =>
          setTo(
            message`Record with ${name} (${width} × ${height}, ${Number(rate.toFixed(3))} fps)`,
            at,
            name,
          ),
        ),
      ...onPurpose,
    ];
  },
};

/** `reframe: 1x`, the whole picture, in every cut of the shot that doesn't say its own. */
function enlargedIn({ source, shot }: Bench, { recorded, delivered }: Facts): readonly PlanFix[] {
  const { file } = source.reader;
  const silent = source.reader.cutsOf(shot).filter(({ reframe }) => reframe === null);
  if (silent.length === 0) return [];
  const times = Math.max(delivered[0] / recorded[0], delivered[1] / recorded[1]);
  const larger = `${Number(times.toFixed(2))}x`;
  return [
    {
      title:
        silent.length === 1
          ? message`Enlarge it on purpose in ${silent[0]!.cut}: \`reframe: 1x\``
          : message`Enlarge it on purpose in ${silent.length} cuts: \`reframe: 1x\``,
      sideEffects: message`enlarged ${larger}, so fine detail is softer`,
      edits: silent.map(({ cut }) => ({
        op: 'set',
        at: { file, entry: idOf('cuts', cut), path: ['reframe'] },
        text: '1x',
      })),
    },
  ];
}

/** Read only of a recording that is too small, so that no other shot follows from the cuts. */
function meantBy({ source, shot }: Bench, headroom: number): Facts['meant'] {
  const cuts = source.reader.cutsOf(shot);
  const reframes = cuts.flatMap(({ reframe }) => reframe ?? []);
  if (cuts.length === 0 || reframes.length < cuts.length) return null;
  return { cuts: cuts.map(({ cut }) => cut), enlarged: Math.max(...reframes) / headroom };
}
