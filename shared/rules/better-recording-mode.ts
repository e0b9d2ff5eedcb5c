import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { chosenSetting, type Setting, settingsOf } from './recording-settings.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly chosen: string;
  readonly better: string;
  readonly gains: Gains;
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
    if (!chosen) return [];
    const better = settingsOf(bench)
      .map((setting) => ({ setting, gains: gainsOf(setting, chosen) }))
      .filter(({ gains }) => countOf(gains) > 0)
      .sort((a, b) => countOf(b.gains) - countOf(a.gains))[0];
    if (!better) return [];
    return [
      {
        at: bench.fields.record.at,
        facts: { chosen: chosen.name, better: better.setting.name, gains: better.gains },
      },
    ];
  },
  words: ({ chosen, better, gains }) => ({
    what: message`A better recording mode is available: ${better} instead of ${chosen}.`,
    why: message`It has ${gainsWords(gains).join(message` and `)}.`,
  }),
  fixes: ({ at, facts: { better } }) => [setTo(message`Record with ${better}`, at, better)],
};

const countOf = (gains: Gains): number => Object.keys(gains).length;

const gainsWords = ({ pixels, fps, mbPerS }: Gains): readonly string[] => [
  ...(pixels ? [message`${pixels.width} × ${pixels.height} pixels`] : []),
  ...(fps === undefined ? [] : [`${Number(fps.toFixed(3))} fps`]),
  ...(mbPerS === undefined ? [] : [`${Number(mbPerS.toFixed(1))} Mb/s`]),
];

/** Empty if it is worse in anything, or records another part of the sensor. */
function gainsOf(setting: Setting, chosen: Setting): Gains {
  if (setting.name === chosen.name || setting.areaWidth !== chosen.areaWidth) return {};
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
