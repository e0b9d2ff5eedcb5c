/**
 * A mirror-like film as a surface: flat, or bowed into part of a sphere. It stands through the
 * origin, the subject's centre; the camera looks along −z from the entrance pupil at (0, 0, u).
 */
import { add, dot, norm, scale, sub, unit, type Vec } from './vector.ts';

/** `level`: leans back about the level axis and throws up; `upright`: turned, throws to the right. */
export type TiltAxis = 'level' | 'upright';

export interface FilmSurface {
  /** Unit normal at the centre, toward the lens. */
  readonly normal: Vec;
  /** 1/radius in 1/mm; 0 flat, positive bulging toward the lens. */
  readonly curvaturePerMm: number;
}

/**
 * The film tilted by t from square to the axis.
 *
 * @param tiltRad t, rad, |t| < π/2
 */
export function filmSurface(
  tiltRad: number,
  about: TiltAxis = 'level',
  curvaturePerMm = 0,
): FilmSurface {
  const sin = Math.sin(tiltRad);
  const cos = Math.cos(tiltRad);
  return { normal: about === 'level' ? [0, sin, cos] : [sin, 0, cos], curvaturePerMm };
}

/**
 * Curvature of a film that bows by b over the extent L: the circle through the middle and both
 * ends, 1/r = 8b/(L² + 4b²). Positive b bulges toward the lens; |b| up to L/2, half a sphere.
 *
 * @throws RangeError where L isn't positive or the bow is more than half of it
 */
export function bowCurvaturePerMm(bowMm: number, extentMm: number): number {
  if (!(extentMm > 0) || !(Math.abs(bowMm) <= extentMm / 2))
    throw new RangeError(`a bow of ${bowMm} mm over ${extentMm} mm is no part of a sphere`);
  return (8 * bowMm) / (extentMm * extentMm + 4 * bowMm * bowMm);
}

interface SurfacePoint {
  readonly at: Vec;
  /** Unit normal there, toward the lens. */
  readonly normal: Vec;
}

/**
 * The film's point seen in the frame at `frameAt`, a point of the plane of focus z = 0: where the
 * ray from it to the middle of the pupil meets the film. The sphere through the origin with normal
 * n and curvature κ is κ|q|² + 2 n·q = 0 (its points' sign chosen so that positive κ bulges
 * toward the lens), and its normal at q is n + κq.
 *
 * @returns null where the ray misses the film, or sees it from behind
 */
export function filmPoint(
  surface: FilmSurface,
  frameAt: Vec,
  pupilCentre: Vec,
): SurfacePoint | null {
  const toward = unit(sub(pupilCentre, frameAt));
  const { normal, curvaturePerMm: k } = surface;
  const halfB = k * dot(frameAt, toward) + dot(normal, toward);
  const c = k * dot(frameAt, frameAt) + 2 * dot(normal, frameAt);
  const root = halfB * halfB - k * c;
  if (root < 0 || halfB <= 0) return null;
  // The form without a difference of near-equal numbers: holds at κ = 0 too.
  const at = add(frameAt, scale(toward, -c / (halfB + Math.sqrt(root))));
  const there = add(normal, scale(at, k));
  const facing = scale(there, 1 / norm(there));
  return dot(facing, toward) > 0 ? { at, normal: facing } : null;
}
