/**
 * The least tilt at which a mirror-like film stops showing the lens.
 *
 * Worked out by rays, in the plane of the tilt: light that reaches the entrance pupil from a point
 * of the film came from where the reflected ray points; if that is inside the front rim, the film
 * shows the lens there. Law of reflection only, no small angles. In three dimensions the slice
 * through the axis is the one that needs the most tilt, the rim being round.
 */
import { bowCurvaturePerMm, filmPoint, filmSurface } from './film-surface.ts';
import { requireNotNegative, requirePositive } from './range.ts';
import { leastWhere, minimum } from './solve.ts';
import { reflected, sub, unit, type Vec } from './vector.ts';

/** The lens as the film sees it, and how much film the frame shows. */
export interface MirrorView {
  /** W: subject to front rim, mm. */
  readonly workingDistanceMm: number;
  /** R: outer diameter of the rim, hood or card at the front, mm. */
  readonly rimMm: number;
  /** D: diameter of the entrance pupil, mm; 0 for a pinhole. */
  readonly pupilMm: number;
  /** e: how far the entrance pupil stands behind the rim, mm; negative in front of it. */
  readonly pupilBehindRimMm: number;
  /** h: extent of the frame along the tilt, in the plane of focus, mm. */
  readonly fieldAlongMm: number;
  /** b: bow of the film over `bowOverMm`, positive toward the lens, mm; left out: flat. */
  readonly bowMm?: number;
  /** Extent of the film that the bow is measured over, mm; left out: the field. */
  readonly bowOverMm?: number;
}

/** Beyond it a film is seen at a glance, and no film is filmed so. */
export const STEEPEST_TILT_RAD = Math.PI / 3;

/** Points tried along a bowed film before the worst is closed in on; a flat one's is its edge. */
const BOWED_STEPS = 24;

function checked(view: MirrorView): void {
  requirePositive('the working distance W', view.workingDistanceMm);
  requirePositive('the rim R', view.rimMm);
  requireNotNegative('the pupil D', view.pupilMm);
  requirePositive('the field h', view.fieldAlongMm);
  requirePositive('the distance to the pupil W + e', pupilDistanceMm(view));
}

const pupilDistanceMm = (view: MirrorView): number =>
  view.workingDistanceMm + view.pupilBehindRimMm;

const curvatureOf = (view: MirrorView): number =>
  view.bowMm ? bowCurvaturePerMm(view.bowMm, view.bowOverMm ?? view.fieldAlongMm) : 0;

/**
 * How high above the axis, in the plane of the rim, the film's point seen at `frameYMm` throws the
 * ray that enters the pupil at `pupilYMm`. Infinite where it is thrown past the plane or unseen.
 */
function throwHeightMm(
  view: MirrorView,
  tiltRad: number,
  curvaturePerMm: number,
  frameYMm: number,
  pupilYMm: number,
): number {
  const u = pupilDistanceMm(view);
  const surface = filmSurface(tiltRad, 'level', curvaturePerMm);
  const point = filmPoint(surface, [0, frameYMm, 0], [0, 0, u]);
  if (point === null) return Number.POSITIVE_INFINITY;
  const pupil: Vec = [0, pupilYMm, u];
  const out = reflected(unit(sub(pupil, point.at)), point.normal);
  if (out[2] <= 0) return Number.POSITIVE_INFINITY;
  return point.at[1] + ((view.workingDistanceMm - point.at[2]) * out[1]) / out[2];
}

/** The lowest of all such rays: the pupil's upper edge, and the frame's worst point. */
function lowestThrowMm(view: MirrorView, tiltRad: number): number {
  const curvature = curvatureOf(view);
  const half = view.fieldAlongMm / 2;
  const throwAt = (frameY: number): number =>
    throwHeightMm(view, tiltRad, curvature, frameY, view.pupilMm / 2);
  if (curvature === 0) return Math.min(throwAt(-half), throwAt(half));
  const step = view.fieldAlongMm / BOWED_STEPS;
  const heights = Array.from({ length: BOWED_STEPS + 1 }, (_, i) => throwAt(-half + i * step));
  const worst = heights.indexOf(Math.min(...heights));
  const from = -half + Math.max(worst - 1, 0) * step;
  const to = -half + Math.min(worst + 1, BOWED_STEPS) * step;
  return minimum(throwAt, from, to).value;
}

/**
 * Greatest diameter of rim that stays out of the film at tilt t, mm; 0 where even a bare pupil
 * would show, infinite where everything is thrown past it.
 *
 * @throws RangeError outside the ranges of `MirrorView`
 */
export function rimClearedMm(view: MirrorView, tiltRad: number): number {
  checked(view);
  return Math.max(0, 2 * lowestThrowMm(view, tiltRad));
}

/** Whether a film tilted by t shows any part of the rim. */
export const showsLens = (view: MirrorView, tiltRad: number): boolean =>
  rimClearedMm(view, tiltRad) < view.rimMm;

/**
 * Least tilt, rad: the smallest at which no point of the film inside the frame reflects any part
 * of the entrance pupil into the rim. For small angles about
 * [h/2·(1 + k) + R/2 + k·D/2]/(2W), k = W/(W + e).
 *
 * @returns null where no tilt up to 60° is enough
 * @throws RangeError outside the ranges of `MirrorView`
 */
export function leastTiltRad(view: MirrorView): number | null {
  return leastWhere((tilt) => !showsLens(view, tilt), 0, STEEPEST_TILT_RAD);
}
