/**
 * A pull of focus: the ring is turned from one mark to another during the take. The plane of focus
 * goes along the lens axis, and the picture breathes: its field is not the same at both ends.
 */
import { traceChain } from '../optics/chain.ts';
import { ifKnown } from '../plan/field.ts';
import type { Move } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, silent } from './figure.ts';
import { isNo } from './not-applicable.ts';
import type { FocusPullFigures, OpticalFigures, PullEnd } from './shot-figures.ts';
import { setRing, untraced } from './traced.ts';

const ENDS = ['from', 'to'] as const;

export function focusPullFigures(bench: Bench, optical: OpticalFigures): FocusPullFigures {
  const { move } = bench.fields;
  if (move.state === 'missing') return none(isNo('pull'));
  if (move.state === 'invalid') return none(silent);
  const kind = ifKnown(move.value.kind);
  if (kind !== 'pull') return none(kind === undefined ? silent : isNo('pull'));
  const ends = ENDS.map((end) => endOf(end, move.value, bench, optical));
  const [from, to] = ends as [Figure<PullEnd>, Figure<PullEnd>];
  return {
    pullEnds: derive([from, to], (begin, end) => [begin, end] as const),
    pullTravelMm: derive([from, to], (begin, end) =>
      Math.abs(end.subjectToSensorMm - begin.subjectToSensorMm),
    ),
  };
}

const none = (why: Figure<never>): FocusPullFigures => ({ pullEnds: why, pullTravelMm: why });

/** The rig traced with its ring at one end of the pull, by calculation. */
function endOf(
  end: (typeof ENDS)[number],
  move: Move,
  { shot, recordedAreaMm, parts }: Bench,
  { chain }: OpticalFigures,
): Figure<PullEnd> {
  const setting = figureOf(move[end], message`${shot}’s move`);
  const turned = derive([chain, setting], ({ lens }, wanted) => setRing(lens, wanted));
  return derive([chain, turned, recordedAreaMm, parts], (it, ring, area) => {
    const traced = traceChain(it, ring);
    const { magnification, subjectToSensorMm } = traced;
    if (magnification === undefined) return untraced(traced, 'magnification', parts);
    if (subjectToSensorMm === undefined) return untraced(traced, 'subjectToSensorMm', parts);
    if (magnification <= 0 || !Number.isFinite(subjectToSensorMm))
      return notKnown(message`at infinity the pull has no field and no end to its travel`);
    return {
      fieldMm: [area.width / magnification, area.height / magnification] as const,
      subjectToSensorMm,
    };
  });
}
