/**
 * What the edit needs of a shot: the length of its takes, and the rate and resolution of the
 * recording.
 */
import { isKnown } from '../plan/field.ts';
import { below, type Place } from '../plan/place.ts';
import { type Rational, toNumber } from '../quantity/rational.ts';
import type { Bench } from './bench.ts';
import { valueIn } from './figure.ts';
import { clipRateOf, clipSecondsOf, isConformed } from './playback.ts';
import { isOfStills } from './stills.ts';
import { takesOf } from './take-length.ts';

interface RecordSetting {
  readonly name: string;
  /** Of the clip, at 100%. */
  readonly rate: Rational;
  /** At which it is recorded; another, where the body conforms it. */
  readonly recorded: Rational;
  readonly width: number;
  readonly height: number;
}

/** Separate data, so that other changes of a shot don't affect the edit. */
export interface Footage {
  readonly shot: string;
  readonly at: Place;
  /** Length of the clip of one take at 100%, s, and how many are planned; null: not known. */
  readonly takeS: number | null;
  readonly takes: number | null;
  /** The place of the take's length, whether or not it is written. */
  readonly takeAt: Place;
  /** The setting that it is recorded with; null: not known. */
  readonly setting: RecordSetting | null;
  readonly recordAt: Place;
  /**
   * A clip that doesn't play in real time: how its length is written, and how much of that a second
   * of it needs; null: it plays in real time.
   */
  readonly stretch: {
    readonly unit: 'frames' | 'time-lapse' | 'take';
    readonly perS: number;
  } | null;
  /** The finished stack of the shot is one picture, which a cut may hold for as long as it likes. */
  readonly isHeld: boolean;
  /** Real seconds that a second of the clip shows at 100%; null: not known. */
  readonly realPerS: number | null;
  /** All settings of the body that are known, in the order of the plan. */
  readonly settings: readonly RecordSetting[];
}

export function footageOf(bench: Bench): Footage {
  const { fields, body, shot, at } = bench;
  const settings = body ? settingsOf(body) : [];
  const name = bench.recording?.name;
  const stretch = stretchOf(bench);
  const take = isKnown(fields.take) ? fields.take.value.duration.at : null;
  return {
    shot,
    at,
    takeS: valueIn(clipSecondsOf(bench)) ?? null,
    takes: valueIn(takesOf(bench)) ?? null,
    takeAt: stretch?.at ?? take ?? below(fields.take.at, 'duration'),
    setting: isOfStills(bench)
      ? stillsOf(bench)
      : (settings.find((setting) => setting.name === name) ?? null),
    recordAt: recordPlaceOf(bench),
    stretch: stretch?.how ?? null,
    isHeld: bench.stack?.isStills ?? false,
    realPerS: realPerSOf(bench),
    settings: bench.timeLapse || bench.stack?.isStills ? [] : settings,
  };
}

/** Where the plan says what is recorded. */
const recordPlaceOf = ({ timeLapse, stack, fields }: Bench): Place =>
  timeLapse ? fields['time-lapse'].at : stack?.isStills ? stack.at : fields.record.at;

/** A conformed clip shows less than a second of what was before the lens, a time-lapse more. */
function realPerSOf(bench: Bench): number | null {
  const { timeLapse, recordRate } = bench;
  const rate = clipRateOf(bench);
  if (!rate.known) return null;
  const framesPerS = toNumber(rate.value);
  if (timeLapse) return timeLapse.intervalS.known ? framesPerS * timeLapse.intervalS.value : null;
  return isConformed(bench) ? (recordRate.known ? framesPerS / recordRate.value : null) : 1;
}

/** A clip, or a picture, that is put together from stills. */
function stillsOf(bench: Bench): RecordSetting | null {
  const [rate, pixels] = [clipRateOf(bench), bench.recordedPixels];
  return rate.known && pixels.known
    ? { name: 'stills', rate: rate.value, recorded: rate.value, ...pixels.value }
    : null;
}

/** Where the length of a clip is written that doesn't play in real time. */
function stretchOf(
  bench: Bench,
): { readonly at: Place; readonly how: NonNullable<Footage['stretch']> } | null {
  const { timeLapse, fields } = bench;
  const rate = clipRateOf(bench);
  if (!rate.known) return null;
  const framesPerS = toNumber(rate.value);
  if (!timeLapse)
    return isConformed(bench) && bench.recordRate.known
      ? {
          at: below(fields.take.at, 'duration'),
          how: { unit: 'take', perS: framesPerS / bench.recordRate.value },
        }
      : null;
  if (!timeLapse.fields || !timeLapse.intervalS.known) return null;
  const { frames, duration } = timeLapse.fields;
  return frames.state === 'missing'
    ? {
        at: duration.at,
        how: { unit: 'time-lapse', perS: framesPerS * timeLapse.intervalS.value },
      }
    : { at: frames.at, how: { unit: 'frames', perS: framesPerS } };
}

function settingsOf({ fields }: NonNullable<Bench['body']>): readonly RecordSetting[] {
  if (!isKnown(fields['recording-modes'])) return [];
  return [...fields['recording-modes'].value].flatMap(([name, field]): RecordSetting[] => {
    if (!isKnown(field) || !isKnown(field.value.rate) || !isKnown(field.value.resolution))
      return [];
    const { width, height } = field.value.resolution.value;
    const { rate, plays } = field.value;
    const recorded = rate.value;
    return [{ name, rate: isKnown(plays) ? plays.value : recorded, recorded, width, height }];
  });
}
