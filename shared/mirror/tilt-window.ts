/** The window of tilts that a mirror-like film leaves: least by the lens, greatest by the rest. */
import { type MirrorView, showsLens } from './least-tilt.ts';
import { requireNotNegative, requirePositive } from './range.ts';
import { leastWhere } from './solve.ts';

interface FlatSubject {
  /** h: extent of the frame along the tilt, mm. */
  readonly fieldAlongMm: number;
  /** L: extent of the subject along the tilt, on the subject, mm. */
  readonly subjectAlongMm: number;
  /** Depth of the subject's own bow, mm; left out: flat. */
  readonly bowMm?: number;
}

/**
 * Depth along the axis that a flat subject needs at tilt t: min(h, L·cos t)·tan t, plus its bow.
 *
 * @param tiltRad t, rad, 0 to under π/2
 */
export function depthForTiltMm(subject: FlatSubject, tiltRad: number): number {
  const shown = Math.min(subject.fieldAlongMm, subject.subjectAlongMm * Math.cos(tiltRad));
  return shown * Math.tan(tiltRad) + (subject.bowMm ?? 0);
}

/**
 * Greatest tilt that a depth allows, rad: the inverse of `depthForTiltMm`. π/2 where the depth is
 * at least the subject itself; 0 where the bow alone takes it.
 *
 * @throws RangeError where an extent isn't positive or the depth is negative
 */
export function greatestTiltByDepthRad(subject: FlatSubject, depthMm: number): number {
  requirePositive('the field h', subject.fieldAlongMm);
  requirePositive('the subject L', subject.subjectAlongMm);
  requireNotNegative('the depth', depthMm);
  const left = Math.max(0, depthMm - (subject.bowMm ?? 0));
  if (left >= subject.subjectAlongMm) return Math.PI / 2;
  return Math.max(Math.atan(left / subject.fieldAlongMm), Math.asin(left / subject.subjectAlongMm));
}

/** Farther off than this nobody films small things. */
const FARTHEST_MM = 20_000;

/**
 * Shortest working distance from which a film tilted by t no longer shows the lens, all else
 * equal, mm: what would open a window that is shut. About halves with every doubling of t.
 *
 * @returns null where 20 m are not enough (a bow can turn the film's edge to the lens for good)
 * @throws RangeError outside the ranges of `MirrorView`
 */
export function workingDistanceForTiltMm(view: MirrorView, tiltRad: number): number | null {
  const clear = (workingDistanceMm: number): boolean =>
    !showsLens({ ...view, workingDistanceMm }, tiltRad);
  // Nearer than this the film's own edge, or the pupil in front of the rim, touches the subject.
  const nearest = 1 + Math.max(0, -view.pupilBehindRimMm, view.fieldAlongMm * Math.tan(tiltRad));
  return leastWhere(clear, nearest, FARTHEST_MM);
}

/**
 * Widest frame, along the tilt, in which a film tilted by t doesn't show the lens, mm.
 *
 * @returns 0 where no frame is narrow enough
 */
export function fieldForTiltMm(view: MirrorView, tiltRad: number): number {
  const shows = (fieldAlongMm: number): boolean => showsLens(bowKept(view, fieldAlongMm), tiltRad);
  const tiniest = 1e-6;
  if (shows(tiniest)) return 0;
  return leastWhere(shows, tiniest, view.workingDistanceMm) ?? view.workingDistanceMm;
}

/** A narrower frame doesn't flatten the film: its bow stays measured over what it was. */
const bowKept = (view: MirrorView, fieldAlongMm: number): MirrorView => ({
  ...view,
  fieldAlongMm,
  bowOverMm: view.bowOverMm ?? view.fieldAlongMm,
});
