/** Values that follow from what stands elsewhere in the plan: each with the words for why. */
import { clipRateOf, isConformed } from '../../figures/playback.ts';
import { idOf, keyOfEntry } from '../../plan/entry-id.ts';
import { type Field, ifKnown } from '../../plan/field.ts';
import type { DefName } from '../../plan/generated/names.ts';
import type { Body, Cut } from '../../plan/generated/types.ts';
import type { Fraction } from '../../quantity/brands.ts';
import { KINDS } from '../../quantity/index.ts';
import { toNumber } from '../../quantity/rational.ts';
import { message } from '../../words/message.ts';
import type { Where } from './where.ts';

type Found = readonly (readonly [text: string, words: string])[];

const FOLLOWS: Partial<Record<DefName, Readonly<Record<string, (where: Where) => Found>>>> = {
  cut: { speed: cutSpeeds },
  deliver: { duration: editLength },
  recording: { area: recordedAreas },
  lens: { 'focal-length': named('mm') },
  tube: { length: named('mm') },
  'close-up': { power: named('dpt') },
};

export function followsFrom(where: Where): Found {
  const { meaning } = where;
  return (meaning && FOLLOWS[meaning.of]?.[meaning.key]?.(where)) ?? [];
}

/** The number that an entry is named by: `tube-36` is 36 mm long. */
function named(unit: string): (where: Where) => Found {
  return ({ place: { entry } }) => {
    const number = /(?:^|[a-z-])(\d{1,4})$/.exec(keyOfEntry(entry))?.[1];
    return number === undefined ? [] : [[`${Number(number)} ${unit}`, message`by its name`]];
  };
}

/**
 * Speeds that a cut's footage allows, the slowest last: real time, and as slow as every frame still is
 * one of its own. Empty where rate and delivery aren't known.
 */
function cutSpeeds({ context, file, place }: Where): Found {
  const { analysis } = context;
  const cut = analysis.entries.lowered(file, place.entry)?.value as Cut | undefined;
  const shot: Field<string> | undefined = cut?.shot;
  const name = shot && ifKnown(shot);
  const bench = name === undefined ? undefined : analysis.bench(file, idOf('shots', name));
  const delivered = bench?.deliver && ifKnown(bench.deliver.rate);
  const rate = bench && clipRateOf(bench);
  if (!rate?.known || !delivered) return [];
  const slowest = toNumber(delivered) / toNumber(rate.value);
  // A time-lapse, or a clip that the body conforms, has a speed of its own.
  const isReal = !bench.timeLapse && !isConformed(bench);
  const whole = isReal ? message`real time` : message`as the clip plays`;
  if (!(slowest < 1)) return [['100 %', whole]];
  // A per cent that is rounded down would ask for more frames than there are.
  const percent = Math.ceil(slowest * 1000 - 1e-6) / 1000;
  const print = (from: number, to: number) =>
    KINDS['playback-speed'].print({ from: from as Fraction, to: to as Fraction });
  return [
    ['100 %', whole],
    [print(percent, percent), message`slowest without repeats, by ${String(name)}`],
    [print(1, percent), message`ramps down to the slowest`],
  ];
}

/** How long the edit is. */
function editLength({ context, file }: Where): Found {
  const edit = context.analysis.edit(file);
  if (!edit?.totalFrames.known || !edit.rate.known) return [];
  const { n, d } = edit.rate.value;
  const seconds = (edit.totalFrames.value * d) / n;
  return seconds > 0 ? [[KINDS.time.print(seconds as never), message`as long as the edit`]] : [];
}

/** The whole width of the sensor, in the shape of the recorded frame. */
function recordedAreas({ context, file, place }: Where): Found {
  const lowered = context.analysis.entries.lowered(file, place.entry);
  const body = lowered?.def === 'body' ? (lowered.value as Body) : undefined;
  const sensor = body && ifKnown(body.sensor);
  const setting = body && ifKnown(body['recording-modes'])?.get(String(place.path[1]));
  const size = setting?.state === 'known' ? ifKnown(setting.value.resolution) : undefined;
  if (!sensor || !size) return [];
  const scale = Math.min(sensor.width / size.width, sensor.height / size.height);
  const [width, height] = [size.width, size.height].map((side) =>
    Number((side * scale).toFixed(2)),
  );
  return [
    [
      KINDS.size.print({ width, height } as never),
      message`whole sensor width, in the aspect ratio of the frame`,
    ],
  ];
}
