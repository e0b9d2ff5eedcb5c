/**
 * What the edit needs of a shot: the length of its takes, and the rate and resolution of the
 * recording.
 */
import { isKnown } from '../plan/field.ts';
import { below, type Place } from '../plan/place.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Bench } from './bench.ts';
import { valueIn } from './figure.ts';
import { takeLengthOf, takesOf } from './recording.ts';

interface RecordSetting {
  readonly name: string;
  readonly rate: Rational;
  readonly width: number;
  readonly height: number;
}

/** Separate data, so that other changes of a shot don't affect the edit. */
export interface Footage {
  readonly shot: string;
  readonly at: Place;
  /** Length of one take, s, and how many are planned; null: not known. */
  readonly takeS: number | null;
  readonly takes: number | null;
  /** The place of the take's length, whether or not it is written. */
  readonly takeAt: Place;
  /** The setting that it is recorded with; null: not known. */
  readonly setting: RecordSetting | null;
  readonly recordAt: Place;
  /** All settings of the body that are known, in the order of the plan. */
  readonly settings: readonly RecordSetting[];
}

export function footageOf(bench: Bench): Footage {
  const { fields, body, shot, at } = bench;
  const settings = body ? settingsOf(body) : [];
  const name = bench.recording?.name;
  const take = isKnown(fields.take) ? fields.take.value.duration.at : null;
  return {
    shot,
    at,
    takeS: valueIn(takeLengthOf(bench)) ?? null,
    takes: valueIn(takesOf(bench)) ?? null,
    takeAt: take ?? below(fields.take.at, 'duration'),
    setting: settings.find((setting) => setting.name === name) ?? null,
    recordAt: fields.record.at,
    settings,
  };
}

function settingsOf({ fields }: NonNullable<Bench['body']>): readonly RecordSetting[] {
  if (!isKnown(fields['recording-modes'])) return [];
  return [...fields['recording-modes'].value].flatMap(([name, field]): RecordSetting[] => {
    if (!isKnown(field) || !isKnown(field.value.rate) || !isKnown(field.value.resolution))
      return [];
    const { width, height } = field.value.resolution.value;
    return [{ name, rate: field.value.rate.value, width, height }];
  });
}
