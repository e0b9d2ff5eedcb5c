/** What moves during an exposure, and how far a move shifts the subject along the axis. */
import { jitterPx, panSpeedMmPerS, smearPx } from '../optics/smear.ts';
import { ifKnown } from '../plan/field.ts';
import type { Move } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import { orAssumed, vibrationOfStand } from './assumed.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import type { EagerPull } from './focus-pull.ts';
import { durationOf } from './needed-depth.ts';
import { isNo } from './not-applicable.ts';
import type {
  MotionFigures,
  OpticalFigures,
  SharpnessFigures,
  TimeFigures,
} from './shot-figures.ts';

export function motionFigures(
  bench: Bench,
  { magnification, subjectToSensorMm, fieldMm }: OpticalFigures,
  { pixelUm }: SharpnessFigures,
  { shutterSeconds }: TimeFigures,
  pull: () => EagerPull,
): MotionFigures {
  const flow = bench.fields['subject-speed'];
  const flowing = flow.state === 'missing' ? known(0) : figureOf(flow, bench.shot);
  const moving = moveSpeed(bench, subjectToSensorMm, fieldMm, pull);
  const subjectSpeedMmPerS = derive([flowing, moving], (own, camera) => own + camera);
  return {
    subjectSpeedMmPerS,
    smearPx: derive(
      [subjectSpeedMmPerS, magnification, shutterSeconds, pixelUm],
      (speedMmPerS, m, timeS, pixel) =>
        speedMmPerS === 0 ? 0 : smearPx({ speedMmPerS, timeS, magnification: m, pixelUm: pixel }),
    ),
    crossingS: crossingOf(bench, moving, fieldMm),
    jitterPx: derive([vibrationOf(bench), magnification, pixelUm], jitterPx),
  };
}

/** How fast a move carries the subject across the frame, mm/s at the subject; 0 without one. */
function moveSpeed(
  bench: Bench,
  subjectToSensorMm: Figure<number>,
  fieldMm: OpticalFigures['fieldMm'],
  pull: () => EagerPull,
): Figure<number> {
  const { move } = bench.fields;
  if (move.state === 'missing') return known(0);
  if (move.state === 'invalid') return silent;
  const kind = ifKnown(move.value.kind);
  // A push-in moves along the axis, not across it.
  if (kind === 'push-in') return known(0);
  if (kind === 'focus-pull') return breathingSpeed(bench, move.value, pull());
  const speed = figureOf(move.value.speed, message`${bench.shot}'s move`);
  const along = derive([speed], (it) =>
    it.kind === 'line' ? it.value : notKnown(message`the speed of the move is an angle per second`),
  );
  const turning = derive([speed], (it) =>
    it.kind === 'turn'
      ? it.value
      : notKnown(message`the speed of the move is a distance per second`),
  );
  switch (kind) {
    case 'slide':
      return along;
    case 'pan':
    case 'tilt':
      // The rotation is taken about the sensor, which is close to the axis of the head.
      return derive([turning, subjectToSensorMm], panSpeedMmPerS);
    case 'turntable':
      // Fastest at the edge of what is seen of the subject: half the frame from its middle.
      return derive([turning, seenRadiusMm(bench, fieldMm)], panSpeedMmPerS);
    default:
      return silent;
  }
}

/** Field along the move over its speed, s. What turns on a table crosses no frame. */
function crossingOf(
  { fields }: Bench,
  speedMmPerS: Figure<number>,
  fieldMm: OpticalFigures['fieldMm'],
): Figure<number> {
  const move = ifKnown(fields.move);
  const kind = move && ifKnown(move.kind);
  if (fields.move.state === 'invalid') return silent;
  if (kind !== 'slide' && kind !== 'pan' && kind !== 'tilt') return isNo('sweep');
  const isUpright = kind === 'tilt' || (move && ifKnown(move.along)) === 'upright';
  return derive([speedMmPerS, fieldMm], (speed, [width, height]) =>
    speed > 0 ? (isUpright ? height : width) / speed : notKnown(message`the camera stands still`),
  );
}

/** Amplitude of the rig against the subject, mm: of its stand, or as usual for one of its kind. */
function vibrationOf({ carriers: { stand } }: Bench): Figure<number> {
  if (!stand) return isNo('stand');
  return orAssumed(stand.fields.vibration, stand.name, vibrationOfStand(stand.fields));
}

/**
 * A focus pull breathes: while the picture grows or shrinks, its corners run outward or inward. The
 * ring is taken to turn evenly; a pull to or from infinity has no field, and counts as still.
 */
function breathingSpeed(bench: Bench, move: Move, pull: EagerPull): Figure<number> {
  const { pullEnds } = pull;
  if (!pullEnds.known && pullEnds.needs.length === 0 && !pullEnds.silent) return known(0);
  return derive([pullEnds, durationOf(move, bench)], ([from, to], seconds) => {
    const halves = [from, to].map(({ fieldMm: [width, height] }) => Math.hypot(width, height) / 2);
    return Math.abs(halves[1]! - halves[0]!) / seconds;
  });
}

/** How far from the middle the frame, or the subject where it is smaller, still shows something. */
function seenRadiusMm({ subject }: Bench, fieldMm: OpticalFigures['fieldMm']): Figure<number> {
  const size = subject && ifKnown(subject.fields.size);
  const diameter = subject && ifKnown(subject.fields.diameter);
  const own = diameter ?? (size && Math.max(size.width, size.height));
  return derive([fieldMm], ([width, height]) =>
    Math.min(Math.hypot(width, height) / 2, own === undefined ? Number.POSITIVE_INFINITY : own / 2),
  );
}
