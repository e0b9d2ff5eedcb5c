/** Speeds that a cut's footage allows: real time, and as slow as every frame still is one of its own. */
import { clipRateOf, isConformed } from '../../figures/playback.ts';
import { idOf } from '../../plan/entry-id.ts';
import { type Field, ifKnown } from '../../plan/field.ts';
import type { Cut } from '../../plan/generated/types.ts';
import type { Fraction } from '../../quantity/brands.ts';
import { KINDS } from '../../quantity/index.ts';
import { toNumber } from '../../quantity/rational.ts';
import { message } from '../../words/message.ts';
import type { Where } from './where.ts';

/** Text and what it means, the slowest last; empty where size and rate of the shot aren't known. */
export function cutSpeeds({ context, file, place }: Where): readonly (readonly [string, string])[] {
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
