/**
 * A focus pull: the ring is turned from one mark to another during the take. The plane of focus
 * moves along the lens axis, and the picture breathes: its field differs between the ends.
 */
import { type ChainTrace, traceChain } from '../optics/chain.ts';
import type { Depth } from '../optics/depth.ts';
import { ifKnown } from '../plan/field.ts';
import type { Move } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, silent } from './figure.ts';
import { depthAt, marksOnWay } from './focus-marks.ts';
import { type Makers, once } from './lazily.ts';
import { isNo } from './not-applicable.ts';
import type {
  FocusPullFigures,
  OpticalFigures,
  PullEnd,
  SharpnessFigures,
} from './shot-figures.ts';
import { setRing, untraced } from './traced.ts';

/** The marks take long to find and are only printed. */
export type EagerPull = Omit<FocusPullFigures, 'pullMarks'> &
  Makers<Pick<FocusPullFigures, 'pullMarks'>>;

const ENDS = ['from', 'to'] as const;

export function focusPullFigures(
  bench: Bench,
  optical: OpticalFigures,
  { circleOfConfusionMm }: Pick<SharpnessFigures, 'circleOfConfusionMm'>,
): EagerPull {
  const { move } = bench.fields;
  if (move.state === 'missing') return none(isNo('pull'));
  if (move.state === 'invalid') return none(silent);
  const kind = ifKnown(move.value.kind);
  if (kind !== 'focus-pull') return none(kind === undefined ? silent : isNo('pull'));
  const traces = ENDS.map((end) => traceAt(end, move.value, bench, optical));
  const [from, to] = traces.map((trace) => endOf(trace, bench)) as [
    Figure<PullEnd>,
    Figure<PullEnd>,
  ];
  const [begun, ended] = traces as [Figure<ChainTrace>, Figure<ChainTrace>];
  return {
    pullDepthMm: derive(
      [begun, ended, circleOfConfusionMm, bench.marked],
      (first, last, circleMm, marked) => {
        const depths = [first, last].map((trace) => depthAt(trace, circleMm, marked));
        const [a, b] = depths as [Depth | undefined, Depth | undefined];
        if (!a || !b)
          return notKnown(
            message`at infinity the focus pull has no field and no limit to its travel`,
          );
        const isNearer = (first.magnification ?? 0) >= (last.magnification ?? 0);
        return isNearer ? a.frontMm + b.behindMm : b.frontMm + a.behindMm;
      },
    ),
    pullEnds: derive([from, to], (begin, end) => [begin, end] as const),
    pullTravelMm: derive([from, to], (begin, end) =>
      Math.abs(end.subjectToSensorMm - begin.subjectToSensorMm),
    ),
    pullBreathing: derive(
      [from, to],
      ({ fieldMm: [first] }, { fieldMm: [last] }) => Math.max(first / last, last / first) - 1,
    ),
    // An end at infinity has no field and no place, which is said of the ends.
    pullMarks: once(() =>
      derive(
        [optical.chain, circleOfConfusionMm, bench.marked, begun, ended, from, to],
        (chain, circleMm, marked, first, last) =>
          marksOnWay(
            { chain, circleMm, marked },
            [first.ringMagnification, last.ringMagnification],
            1,
          ),
      ),
    ),
  };
}

const none = (why: Figure<never>): EagerPull => ({
  pullEnds: why,
  pullTravelMm: why,
  pullDepthMm: why,
  pullBreathing: why,
  pullMarks: () => why,
});

/**
 * How far a focus pull moves the plane of focus along the axis, mm; Infinity from or to infinity.
 * undefined: the shot has no focus pull.
 */
export function passedByPullMm(bench: Bench, optical: OpticalFigures): Figure<number> | undefined {
  const { move } = bench.fields;
  if (move.state !== 'known' || ifKnown(move.value.kind) !== 'focus-pull') return undefined;
  const places = ENDS.map((end) =>
    derive([traceAt(end, move.value, bench, optical)], (trace) => {
      if (trace.focus === 'infinity') return Number.POSITIVE_INFINITY;
      return trace.subjectToSensorMm ?? untraced(trace, 'subjectToSensorMm', bench.parts);
    }),
  );
  const [from, to] = places as [Figure<number>, Figure<number>];
  return derive([from, to], (begin, end) => (begin === end ? 0 : Math.abs(end - begin)));
}

/** The rig traced with its ring at one end of the pull, by calculation. */
function traceAt(
  end: (typeof ENDS)[number],
  move: Move,
  { shot }: Bench,
  { chain }: OpticalFigures,
): Figure<ChainTrace> {
  const setting = figureOf(move[end], message`${shot}'s move`);
  const turned = derive([chain, setting], ({ lens }, wanted) => setRing(lens, wanted));
  return derive([chain, turned], (it, ring) => traceChain(it, ring));
}

function endOf(trace: Figure<ChainTrace>, { recordedAreaMm, parts }: Bench): Figure<PullEnd> {
  return derive([trace, recordedAreaMm, parts], (traced, area) => {
    const { magnification, subjectToSensorMm } = traced;
    if (magnification === undefined) return untraced(traced, 'magnification', parts);
    if (subjectToSensorMm === undefined) return untraced(traced, 'subjectToSensorMm', parts);
    if (magnification <= 0 || !Number.isFinite(subjectToSensorMm))
      return notKnown(message`at infinity the focus pull has no field and no limit to its travel`);
    return {
      fieldMm: [area.width / magnification, area.height / magnification] as const,
      subjectToSensorMm,
    };
  });
}
