/** Whether the body of a shot has a better recording mode: the plan says it once for all its shots. */
import type { Bench } from '../figures/bench.ts';
import { ifKnown } from '../plan/field.ts';
import { toNumber } from '../quantity/rational.ts';
import { chosenSetting, type Setting, settingsOf } from './recording-settings.ts';
import type { ShotRule } from './shot-rule.ts';

export interface BetterMode {
  readonly body: string;
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
export interface Gains {
  readonly pixels?: { readonly width: number; readonly height: number };
  readonly fps?: number;
  readonly mbPerS?: number;
}

/** The part of the plan's finding that a shot or the plan may accept. */
export const betterMode: Pick<ShotRule<BetterMode>, 'name' | 'severity' | 'check'> = {
  name: 'better-recording-mode',
  severity: 'note',
  check({ bench }) {
    const chosen = chosenSetting(bench);
    // Frames at intervals gain nothing from a higher rate.
    if (!chosen || !bench.body || bench.timeLapse) return [];
    const better = settingsOf(bench)
      .map((setting) => ({ setting, gains: gainsOf(setting, chosen) }))
      .filter(({ gains }) => countOf(gains) > 0)
      .sort((a, b) => countOf(b.gains) - countOf(a.gains))[0];
    if (!better) return [];
    return [
      {
        at: bench.fields.record.at,
        facts: {
          body: bench.body.name,
          chosen: chosen.name,
          better: better.setting.name,
          gains: better.gains,
          ...consequences(bench, chosen, better.setting),
        },
      },
    ];
  },
};

const countOf = (gains: Gains): number => Object.keys(gains).length;

/** What the better mode is good for, and what it costs. */
function consequences(
  { deliver, shutter }: Bench,
  chosen: Setting,
  better: Setting,
): Pick<BetterMode, 'playback' | 'data' | 'shutter'> {
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
