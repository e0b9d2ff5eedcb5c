/** A shot whose frames are taken at intervals: its frames, its real time and what holds it up. */
import { smearPx } from '../optics/smear.ts';
import { isKnown } from '../plan/field.ts';
import type { Shot } from '../plan/generated/types.ts';
import { crossingS, framesIn } from '../recording/interval.ts';
import { message } from '../words/message.ts';
import type { Bench, TimeLapse } from './bench.ts';
import { derive, type Figure, figureOf, known, silent } from './figure.ts';
import type { Makers } from './lazily.ts';
import { once } from './lazily.ts';
import { isNo } from './not-applicable.ts';
import { clipRateOf, clipSecondsOf, isConformed } from './playback.ts';
import type {
  MotionFigures,
  OpticalFigures,
  SharpnessFigures,
  TimeFigures,
  TimeLapseFigures,
} from './shot-figures.ts';
import { stillsField, stillsOf } from './stills.ts';

/** null: the shot has no time-lapse. */
export function timeLapseOf({ 'time-lapse': field }: Shot, shot: string): TimeLapse | null {
  if (field.state === 'missing') return null;
  if (!isKnown(field))
    return { isStills: true, intervalS: silent, frames: silent, spanS: silent, fields: null };
  const { interval, duration, frames: given, mode } = field.value;
  const of = message`${shot}'s time-lapse`;
  const intervalS: Figure<number> = figureOf(interval, of);
  const frames: Figure<number> =
    given.state === 'missing'
      ? derive([figureOf(duration, of), intervalS], framesIn)
      : figureOf(given, of);
  return {
    isStills: !isKnown(mode) || mode.value === 'stills',
    intervalS,
    frames,
    spanS: derive([frames, intervalS], (count, seconds) => count * seconds),
    fields: field.value,
  };
}

/** Time in which the body can't begin another frame: the exposure, and the writing if it is known. */
function busyS(bench: Bench, { shutterSeconds }: TimeFigures): Figure<number> {
  const write = stillsField(bench, 'write');
  const writing: Figure<number> =
    !bench.timeLapse?.isStills || !write || write.state === 'missing'
      ? known(0)
      : figureOf(write, bench.body!.name);
  return derive([shutterSeconds, writing], (exposure, after) => exposure + after);
}

const NO_LAPSE = isNo('timeLapse');

/** Of a shot that is filmed in one go. */
const NONE: Omit<Makers<TimeLapseFigures>, 'playingS'> = {
  timeLapseFrames: () => NO_LAPSE,
  timeLapseS: () => NO_LAPSE,
  intervalLeftS: () => NO_LAPSE,
  growthPx: () => NO_LAPSE,
  growthCrossingS: () => NO_LAPSE,
  batteryShare: () => NO_LAPSE,
};

export function timeLapseFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharpness: () => SharpnessFigures,
  time: TimeFigures,
  motion: () => MotionFigures,
): Makers<TimeLapseFigures> {
  const { timeLapse } = bench;
  const playingS = once(() =>
    timeLapse || isConformed(bench) ? clipSecondsOf(bench) : isNo('ownSpeed'),
  );
  if (!timeLapse) return { ...NONE, playingS };
  return { ...lapseFigures(bench, timeLapse, optical, sharpness(), time, motion()), playingS };
}

function lapseFigures(
  bench: Bench,
  { frames, spanS, intervalS, fields }: TimeLapse,
  { magnification, fieldMm }: OpticalFigures,
  { pixelUm }: SharpnessFigures,
  time: TimeFigures,
  { subjectSpeedMmPerS }: MotionFigures,
): Omit<Makers<TimeLapseFigures>, 'playingS'> {
  // Over hours nothing stands still unless the plan says so.
  const own = bench.fields['subject-speed'];
  const speed: Figure<number> =
    own.state === 'missing' ? figureOf(own, bench.shot) : subjectSpeedMmPerS;
  return {
    timeLapseFrames: () => frames,
    timeLapseS: () => spanS,
    intervalLeftS: once(() =>
      derive([intervalS, busyS(bench, time)], (interval, busy) => interval - busy),
    ),
    growthPx: once(() =>
      derive([speed, magnification, intervalS, pixelUm], (speedMmPerS, m, timeS, pixel) =>
        speedMmPerS === 0 ? 0 : smearPx({ speedMmPerS, timeS, magnification: m, pixelUm: pixel }),
      ),
    ),
    growthCrossingS: once(() =>
      derive(
        [speed, intervalS, fieldMm, clipRateOf(bench)],
        (speedMmPerS, interval, [width], { n, d }) =>
          speedMmPerS === 0 || !Number.isFinite(width)
            ? Number.POSITIVE_INFINITY
            : crossingS(speedMmPerS, interval, width, n / d),
      ),
    ),
    batteryShare: once(() =>
      fields && isKnown(fields.supply) && fields.supply.value === 'mains'
        ? known(0, [fields.supply.at])
        : derive([spanS, stillsOf(bench, 'battery')], (span, lasts) => span / lasts),
    ),
  };
}
