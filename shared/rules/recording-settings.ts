/** The body's recording settings as rules compare them. */
import type { Bench } from '../figures/bench.ts';
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import type { Recording } from '../plan/generated/types.ts';
import { toNumber } from '../quantity/rational.ts';

export interface Setting {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Frames per second. */
  readonly rate: number;
  /** Rate of the clip that the body conforms; undefined: it plays as recorded. */
  readonly plays: number | undefined;
  /** bit/s; undefined where it isn't given. */
  readonly bitrate: number | undefined;
  /** Longest take by the mode's own limit, s; Infinity: it has none. */
  readonly longestS: number;
  /** Width of the sensor that it records, mm; undefined if it isn't given. */
  readonly areaWidth: number | undefined;
}

type Settings = ReadonlyMap<string, Field<Recording>>;

/** Read once for all the shots of a body. */
const read = new WeakMap<Settings, readonly Setting[]>();

/** Settings whose size and rate are known, in the order of the plan. */
export function settingsOf({ body }: Bench): readonly Setting[] {
  const record = body && ifKnown(body.fields['recording-modes']);
  if (!record) return [];
  let settings = read.get(record);
  if (!settings) {
    settings = readSettings(record);
    read.set(record, settings);
  }
  return settings;
}

function readSettings(record: Settings): readonly Setting[] {
  return [...record].flatMap(([name, field]) => {
    // If a field can't be read, nothing can be compared. The field has its own finding.
    if (!isKnown(field) || Object.values(field.value).some(({ state }) => state === 'invalid'))
      return [];
    const size = ifKnown(field.value.resolution);
    const rate = ifKnown(field.value.rate);
    const plays = ifKnown(field.value.plays);
    if (!size || !rate) return [];
    return [
      {
        name,
        width: size.width,
        height: size.height,
        rate: toNumber(rate),
        plays: plays && toNumber(plays),
        bitrate: ifKnown(field.value.bitrate),
        longestS: ifKnown(field.value['longest-clip']) ?? Number.POSITIVE_INFINITY,
        areaWidth: ifKnown(field.value.area)?.width,
      },
    ];
  });
}

export const chosenSetting = (bench: Bench): Setting | undefined =>
  settingsOf(bench).find(({ name }) => name === bench.recording?.name);
