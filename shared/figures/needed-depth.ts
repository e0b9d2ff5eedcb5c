/** The depth along the lens axis that the subject, its tilt and the move need. */

import {
  axialTravelMm,
  slideTravelMm,
  sphereDepthMm,
  tiltedPlaneDepthMm,
} from '../optics/needed-depth.ts';
import { ifKnown } from '../plan/field.ts';
import type { Move, Subject } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { passedByPullMm } from './focus-pull.ts';
import type { Named } from './named.ts';
import type { OpticalFigures } from './shot-figures.ts';
import { natureOf } from './subject-kinds.ts';

type Field = Figure<readonly [width: number, height: number]>;

interface NeededDepth {
  /** Of the subject with what a move adds, mm along the axis. */
  readonly whole: Figure<number>;
  /**
   * The part of it that has to be sharp at the same time: all of it, except what a focus pull
   * passes through or a stack takes, which gets sharp in turn. The pull is assumed to pass through the subject.
   */
  readonly needed: Figure<number>;
  readonly travel: Figure<number>;
}

export function neededDepthMm(
  bench: Bench,
  optical: OpticalFigures,
  pupilDistanceMm: Figure<number>,
): NeededDepth {
  const travel = travelMm(bench);
  const still = stillDepthMm(bench, optical.fieldMm, pupilDistanceMm);
  const whole = derive([still, travel], (depth, added) => depth + added);
  const passed = passedByPullMm(bench, optical);
  const needed = bench.stack
    ? derive([whole], () => 0)
    : passed === undefined
      ? whole
      : derive([whole, passed], (depth, pulled) => Math.max(0, depth - pulled));
  return { whole, needed, travel };
}

/** Depth of the subject at its tilt, without any move. */
function stillDepthMm(
  bench: Bench,
  fieldMm: Field,
  pupilDistanceMm: Figure<number>,
): Figure<number> {
  const { subject, fields } = bench;
  if (!subject)
    return fields.subject.state === 'missing'
      ? (figureOf(fields.subject, bench.shot) as Figure<never>)
      : silent;
  const kind = figureOf(subject.fields.kind, subject.name);
  if (!kind.known) return kind;
  if (natureOf(subject)?.shape === 'ball') return bubbleDepthMm(subject, fieldMm, pupilDistanceMm);
  return derive(
    // The relief comes first: a reader looks for it if the subject faces the lens.
    [reliefMm(subject), planeDepthMm(bench, subject, fieldMm)],
    (relief, plane) => relief + plane,
  );
}

function bubbleDepthMm(
  subject: Named<Subject>,
  fieldMm: Field,
  pupilDistanceMm: Figure<number>,
): Figure<number> {
  return derive(
    [figureOf(subject.fields.diameter, subject.name), fieldMm, pupilDistanceMm],
    (diameter, [width, height], distance) =>
      sphereDepthMm({
        radiusMm: diameter / 2,
        halfDiagonalMm: Math.hypot(width, height) / 2,
        pupilDistanceMm: distance,
      }),
  );
}

/**
 * Films and surfaces are flat except for their sag; a solid subject states the depth of its
 * relief.
 */
export function reliefMm(subject: Named<Subject>): Figure<number> {
  const { depth } = subject.fields;
  if (depth.state === 'missing' && natureOf(subject)?.shape !== 'relief') return known(0);
  return figureOf(depth, subject.name);
}

function planeDepthMm(bench: Bench, subject: Named<Subject>, fieldMm: Field): Figure<number> {
  const { size, sag } = subject.fields;
  const { tiltRad, tiltAxis } = bench;
  const bowed = sag.state === 'missing' ? known(0) : figureOf(sag, subject.name);
  const extent = size.state === 'missing' ? known(undefined) : figureOf(size, subject.name);
  return derive([tiltRad, fieldMm, extent, bowed], (tilt, [width, height], seen, bowMm) =>
    tilt === 0
      ? bowMm
      : tiltedPlaneDepthMm({
          tiltRad: Math.abs(tilt),
          fieldMm: tiltAxis === 'level' ? height : width,
          subjectMm: seen && (tiltAxis === 'level' ? seen.height : seen.width),
          bowMm,
        }),
  );
}

/** What a move adds: a slide along the tilt climbs or sinks, a push goes along the axis. */
function travelMm(bench: Bench): Figure<number> {
  const { move, take } = bench.fields;
  if (move.state === 'missing') return known(0);
  if (move.state === 'invalid') return silent;
  const kind = ifKnown(move.value.kind);
  if (kind !== 'slide' && kind !== 'push-in') return known(0);
  const duration = durationOf(move.value, bench);
  const speed = derive([figureOf(move.value.speed, message`${bench.shot}'s move`)], (value) =>
    value.kind === 'line' ? value.value : notKnown(message`the move rotates instead of sliding`),
  );
  if (take.state === 'invalid') return silent;
  if (kind === 'push-in')
    return derive([speed, duration], (mmPerS, seconds) => axialTravelMm(mmPerS, seconds));
  // A tilt about the level axis makes the plane climb along the upright direction, and the other way.
  const climbs = (ifKnown(move.value.along) ?? 'level') !== bench.tiltAxis;
  if (!climbs) return known(0);
  const rail =
    move.value['rail-angle'].state === 'missing'
      ? known(0)
      : figureOf(move.value['rail-angle'], message`${bench.shot}'s move`);
  return derive([speed, duration, bench.tiltRad, rail], (mmPerS, seconds, tilt, turned) =>
    slideTravelMm(mmPerS, seconds, Math.abs(tilt - turned)),
  );
}

/** How long a move lasts: its own duration, else the take's. */
export function durationOf(move: Move, bench: Bench): Figure<number> {
  if (move.duration.state !== 'missing')
    return figureOf(move.duration, message`${bench.shot}'s move`);
  const { take } = bench.fields;
  if (take.state === 'invalid') return silent;
  if (take.state === 'missing') return figureOf(take, bench.shot) as Figure<never>;
  return figureOf(take.value.duration, message`${bench.shot}'s take`);
}
