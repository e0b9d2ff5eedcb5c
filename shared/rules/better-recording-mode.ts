import type { Bench } from '../figures/bench.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { toNumber } from '../quantity/rational.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { chosenSetting, type Setting, settingsOf } from './recording-settings.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly chosen: string;
  readonly better: string;
  readonly gains: Gains;
  /** Share of its speed that it plays back at, at the rate of the delivery; null: not slower, or unknown. */
  readonly playback: number | null;
  /** Data in a second against the chosen mode; null: not known. */
  readonly data: number | null;
  /** The shutter time and the angle that it becomes; null: set as an angle, or not known. */
  readonly shutter: { readonly seconds: number; readonly angleDeg: number } | null;
}

/** The properties in which it is better. */
interface Gains {
  readonly pixels?: { readonly width: number; readonly height: number };
  readonly fps?: number;
  readonly mbPerS?: number;
}

export const betterRecordingMode: ShotRule<Facts> = {
  name: 'better-recording-mode',
  severity: 'note',
  docs: {
    when: 'the body has a recording mode that is better in resolution, frame rate or bit rate and worse in none.',
    why: "More frames allow slow motion and more pixels allow reframing. Both can be discarded later, but what wasn't recorded can't be recovered.",
    remedy:
      'Use the better recording mode, or accept the finding with a reason (card, heat, unwanted crop).',
    bad: [
      {
        says: 'a lower bit rate than the body offers',
        change: { 'shots/frost/record': 'thin-25' },
      },
    ],
    good: [{ says: 'the best recording mode', change: { 'shots/frost/record': 'full-25' } }],
  },
  check({ bench }) {
    const chosen = chosenSetting(bench);
    // Frames at intervals gain nothing from a higher rate.
    if (!chosen || bench.timeLapse) return [];
    const better = settingsOf(bench)
      .map((setting) => ({ setting, gains: gainsOf(setting, chosen) }))
      .filter(({ gains }) => countOf(gains) > 0)
      .sort((a, b) => countOf(b.gains) - countOf(a.gains))[0];
    if (!better) return [];
    return [
      {
        at: bench.fields.record.at,
        facts: {
          chosen: chosen.name,
          better: better.setting.name,
          gains: better.gains,
          ...consequences(bench, chosen, better.setting),
        },
      },
    ];
  },
  words: ({ chosen, better, gains, playback }, say) => ({
    what: message`A better recording mode is available: \`${better}\` instead of \`${chosen}\`.`,
    why: message`It has ${gainsWords(gains, playback, say).join(message` and `)}.`,
  }),
  fixes: ({ at, facts }) => [
    setTo(message`Record with ${facts.better}`, at, facts.better, priceWords(facts)),
  ],
};

const countOf = (gains: Gains): number => Object.keys(gains).length;

const gainsWords = (
  { pixels, fps, mbPerS }: Gains,
  playback: number | null,
  say: Say,
): readonly string[] => [
  ...(pixels ? [message`${pixels.width} × ${pixels.height} pixels (room to reframe)`] : []),
  ...(fps === undefined
    ? []
    : [
        playback === null
          ? `${Number(fps.toFixed(3))} fps`
          : message`${Number(fps.toFixed(3))} fps (plays back at ${say.percent(playback)} speed)`,
      ]),
  ...(mbPerS === undefined ? [] : [`${Number(mbPerS.toFixed(1))} Mb/s`]),
];

/** What the better mode is good for, and what it costs. */
function consequences(
  { deliver, shutter }: Bench,
  chosen: Setting,
  better: Setting,
): Pick<Facts, 'playback' | 'data' | 'shutter'> {
  const delivered = deliver && ifKnown(deliver.rate);
  const playback = delivered ? toNumber(delivered) / better.rate : 1;
  const data = better.bitrate && chosen.bitrate ? better.bitrate / chosen.bitrate : null;
  const timed = shutter.known && shutter.value.kind === 'time' ? shutter.value.seconds : null;
  return {
    playback: playback < 1 ? playback : null,
    data,
    shutter:
      timed === null || better.rate === chosen.rate
        ? null
        : { seconds: timed, angleDeg: 360 * timed * better.rate },
  };
}

/** "2 times the data; 1/50 s is then 360°"; undefined where nothing of it is known. */
function priceWords({ data, shutter }: Facts): string | undefined {
  const words = [
    ...(data !== null && data > 1 ? [message`${Number(data.toPrecision(2))} times the data`] : []),
    ...(shutter === null
      ? []
      : [
          message`${KINDS.shutter.print({ kind: 'time', seconds: shutter.seconds as Sec })} is then a shutter angle of ${Math.round(shutter.angleDeg)}°`,
        ]),
  ];
  return words.length > 0 ? words.join('; ') : undefined;
}

/** Empty if it is worse in anything, or records another part of the sensor. */
function gainsOf(setting: Setting, chosen: Setting): Gains {
  if (setting.name === chosen.name || setting.areaWidth !== chosen.areaWidth) return {};
  // A clip that plays slowed is another clip, not a better one; nor is a shorter limit better.
  if (setting.plays !== chosen.plays) return {};
  if (setting.plays !== undefined && setting.rate !== chosen.rate) return {};
  if (setting.longestS < chosen.longestS) return {};
  // An unknown bit rate may be higher or lower than the other.
  if ((setting.bitrate === undefined) !== (chosen.bitrate === undefined)) return {};
  const pixels = setting.width * setting.height - chosen.width * chosen.height;
  const worse =
    setting.width < chosen.width ||
    setting.height < chosen.height ||
    setting.rate < chosen.rate ||
    (setting.bitrate ?? 0) < (chosen.bitrate ?? 0);
  if (worse) return {};
  const { width, height, rate, bitrate } = setting;
  return {
    ...(pixels > 0 && { pixels: { width, height } }),
    ...(rate > chosen.rate && { fps: rate }),
    ...(bitrate && chosen.bitrate && bitrate > chosen.bitrate && { mbPerS: bitrate / 1e6 }),
  };
}
