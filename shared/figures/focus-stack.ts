/** A focus stack: its step, its frames, how far rail or ring go, and how long it takes. */

import type { Chain } from '../optics/arrangement.ts';
import { traceChain } from '../optics/chain.ts';
import { settableStepMm, stackFrames, stackStepMm } from '../optics/focus-stack.ts';
import { closestRing } from '../optics/reach.ts';
import { message } from '../words/message.ts';
import type { Bench, Stack } from './bench.ts';
import { derive, type Figure, figureOf, notKnown } from './figure.ts';
import { marksOnWay } from './focus-marks.ts';
import { type Makers, once } from './lazily.ts';
import { isNo } from './not-applicable.ts';
import type {
  FocusMark,
  OpticalFigures,
  SharpnessFigures,
  StackFigures,
  TimeFigures,
} from './shot-figures.ts';

/** A stack as it is laid out. */
interface Laid {
  readonly stepMm: number;
  readonly frames: number;
  readonly travelMm: number;
  /** Empty: it is made with a rail. */
  readonly marks: readonly FocusMark[];
}

type Sharp = Pick<
  SharpnessFigures,
  'usableDepthMm' | 'depthMm' | 'wholeDepthMm' | 'circleOfConfusionMm'
>;

export function stackFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharp: Sharp,
  { shutterSeconds }: Pick<TimeFigures, 'shutterSeconds'>,
): Makers<StackFigures> {
  const { stack } = bench;
  if (!stack) {
    const none = (): Figure<never> => isNo('stack');
    return {
      stackStepMm: none,
      stackFrames: none,
      stackDepthMm: none,
      stackTravelMm: none,
      stackTimeS: none,
      stackMarks: none,
    };
  }
  const laid = once(() => layOut(bench, stack, optical, sharp));
  return {
    stackStepMm: once(() => derive([laid()], ({ stepMm }) => stepMm)),
    stackFrames: once(() => derive([laid()], ({ frames }) => frames)),
    stackDepthMm: once(() =>
      derive([laid(), behindMm(sharp)], ({ travelMm }, behind) => travelMm + behind),
    ),
    stackTravelMm: once(() => derive([laid()], ({ travelMm }) => travelMm)),
    stackTimeS: once(() =>
      derive(
        [laid(), stack.settleS, shutterSeconds],
        ({ frames }, settle, shutter) => frames * (settle + shutter),
      ),
    ),
    stackMarks: once(() => derive([laid()], ({ marks }) => marks)),
  };
}

/** The usable depth behind one plane of focus: both sides grow alike where diffraction decides. */
const behindMm = ({ usableDepthMm, depthMm: { behind, total } }: Sharp): Figure<number> =>
  derive([usableDepthMm, behind, total], (usable, back, whole) =>
    Number.isFinite(whole) ? (usable * back) / whole : usable,
  );

function layOut(bench: Bench, stack: Stack, optical: OpticalFigures, sharp: Sharp): Figure<Laid> {
  const { moves } = stack;
  if (!moves.known) return moves;
  const step = derive([sharp.usableDepthMm, stack.overlap], (depth, overlap) =>
    Number.isFinite(depth)
      ? stackStepMm(depth, overlap)
      : notKnown(message`the depth of field is endless, so nothing is left to stack`),
  );
  return moves.value === 'rail'
    ? onRail(bench, stack, step, sharp.wholeDepthMm)
    : byRing(bench, stack, step, optical, sharp);
}

/** The rig moves as it is, so every frame has the same magnification and depth. */
function onRail(
  { carriers: { rail } }: Bench,
  stack: Stack,
  step: Figure<number>,
  whole: Figure<number>,
): Figure<Laid> {
  const smallest = rail?.fields['smallest-step'];
  const settable =
    smallest === undefined || smallest.state === 'missing'
      ? step
      : derive([step, figureOf(smallest, rail!.name)], settableStepMm);
  return derive([settable, stack.frames, whole], (stepMm, written, neededMm) => {
    const frames = written ?? stackFrames(neededMm, stepMm);
    return { stepMm, frames, travelMm: (frames - 1) * stepMm, marks: [] };
  });
}

/**
 * Turned away from the subject's nearest point. Magnification falls and depth grows on the way, so
 * each step is taken at the nearer plane, where it is shorter.
 */
function byRing(
  bench: Bench,
  stack: Stack,
  step: Figure<number>,
  { chain, ringMagnification }: OpticalFigures,
  { circleOfConfusionMm, wholeDepthMm }: Sharp,
): Figure<Laid> {
  const focused = derive([chain, circleOfConfusionMm, bench.marked], (it, circleMm, marked) => ({
    chain: it,
    circleMm,
    marked,
  }));
  const marks = derive(
    [focused, ringMagnification, stack.overlap, wholeDepthMm, stack.frames],
    (it, ring, overlap, neededMm, written) =>
      marksOnWay(
        it,
        [ring, farEnd(it.chain, ring)],
        1 - overlap,
        written === undefined ? { awayMm: neededMm } : { most: written },
      ),
  );
  return derive([marks, step], (all, stepMm) => {
    const [first, last] = [all[0]!, all.at(-1)!];
    return {
      stepMm,
      frames: all.length,
      travelMm: Math.abs(last.fromSensorMm - first.fromSensorMm),
      marks: all,
    };
  });
}

/** A turn too small to pass a turning point, as a share of the ring's way. */
const SLIGHT = 1e-4;

/**
 * The end of the ring toward which its plane of focus moves away from the sensor: infinity, except
 * where the magnification is above about 1x.
 */
function farEnd(chain: Chain, ring: number): number {
  const closest = closestRing(chain.lens);
  const placeAt = (at: number): number => traceChain(chain, at).subjectToSensorMm ?? Number.NaN;
  const turned = Math.max(0, ring - SLIGHT * closest);
  return placeAt(turned) < placeAt(ring) ? closest : 0;
}
