/** The clip that a take becomes: at which rate it plays, and how long it is then. */
import { type Rational, toNumber } from '../quantity/rational.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf } from './figure.ts';
import { isOfStills } from './stills.ts';
import { takeLengthOf } from './take-length.ts';

/**
 * Frames per second of the clip at 100%. Stills have no rate of their own: they play at the
 * delivery's.
 */
export function clipRateOf(bench: Bench): Figure<Rational> {
  const { deliver, recording, fields, shot } = bench;
  if (isOfStills(bench))
    return deliver
      ? figureOf(deliver.rate, 'deliver')
      : figureOf(bench.source.reader.plan('deliver') as never, message`the plan`);
  if (!recording) return figureOf(fields.record, shot) as Figure<never>;
  const { plays, rate } = recording.fields;
  return figureOf(plays.state === 'missing' ? rate : plays, recording.name);
}

/** The body writes a clip that plays at another rate than it was recorded at. */
export const isConformed = ({ recording }: Pick<Bench, 'recording'>): boolean =>
  recording !== undefined && recording.fields.plays.state !== 'missing';

/** How many times longer the clip is than what it shows. */
export const slowedTimes = (bench: Bench): Figure<number> =>
  derive([bench.recordRate, clipRateOf(bench)], (recorded, plays) => recorded / toNumber(plays));

/** Length of the clip of one take at 100%, s. */
export function clipSecondsOf(bench: Bench): Figure<number> {
  const { timeLapse } = bench;
  if (timeLapse)
    return derive([timeLapse.frames, clipRateOf(bench)], (frames, rate) => frames / toNumber(rate));
  return isConformed(bench)
    ? derive([takeLengthOf(bench), slowedTimes(bench)], (real, times) => real * times)
    : takeLengthOf(bench);
}
