/** Depth along the axis that a subject needs to be sharp from end to end, in mm. */
import { focusBehindNearestMm } from './focus-place.ts';

/** A flat subject, leaning. All ≥ 0; tilt under π/2. */
interface TiltedPlane {
  /** Away from facing the lens, rad. */
  readonly tiltRad: number;
  /** What the frame takes in along the tilt, in the subject's plane, mm. */
  readonly fieldMm: number;
  /** The subject's own length along the tilt, mm; left out: larger than the frame. */
  readonly subjectMm?: number | undefined;
  /** How far it bulges out of flat, mm. */
  readonly bowMm?: number | undefined;
}

/**
 * A flat subject tilted by t: min(field, subject·cos t)·tan t, plus its bow.
 * Seen from far against its size (perspective makes it longer by about (field·tan t / 2u)², u distance
 * to the pupil). Source: trigonometry.
 */
export function tiltedPlaneDepthMm({ tiltRad, fieldMm, subjectMm, bowMm }: TiltedPlane): number {
  const seenMm = Math.min(fieldMm, (subjectMm ?? Number.POSITIVE_INFINITY) * Math.cos(tiltRad));
  return seenMm * Math.tan(tiltRad) + (bowMm ?? 0);
}

/** A sphere seen from its front, with the plane of focus that shares its depth (see `focus-place.ts`). */
interface Sphere {
  readonly radiusMm: number;
  /** Half the diagonal of what the frame takes in at the plane of focus, mm. */
  readonly halfDiagonalMm: number;
  /** Plane of focus to entrance pupil, mm; Infinity allowed; negative: the pupil lies beyond the subject. */
  readonly pupilDistanceMm: number;
}

/**
 * Depth of a sphere in mm, from its nearest point to the farthest that the frame shows: where the ray
 * through the frame's corner meets it, else its limb as the pupil sees it.
 *
 * The ray leaves the pupil at α, tan α = q/P (q half-diagonal, P plane of focus to pupil). With z from
 * pupil to centre and b = z·sin α < r the depth is (z·cos α − √(r² − b²))·cos α − (z − r), else
 * r − r²/z. How far the nearest point lies ahead of the plane of focus follows from the depth, so both
 * are found together, by halving. A parallel projection is up to a third short.
 * Source: trigonometry; the tangent from the pupil touches r²/z ahead of the centre.
 */
export function sphereDepthMm(sphere: Sphere): number {
  let [low, high] = [0, 2 * sphere.radiusMm];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    const aheadMm = focusBehindNearestMm(sphere.pupilDistanceMm, middle);
    if (depthInFrameMm(sphere, aheadMm) > middle) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The same for a given place: the nearest point so far ahead of the plane of focus, mm. Along x, toward
 * the lens from the plane of focus, the ray's height is q·(1 − x/P); it meets the sphere nearest to the
 * lens at the larger root. So it holds for a pupil at infinity or beyond the subject too.
 */
function depthInFrameMm(
  { radiusMm: r, halfDiagonalMm: q, pupilDistanceMm }: Sphere,
  aheadMm: number,
): number {
  const centreMm = aheadMm - r;
  const perMm = 1 / pupilDistanceMm;
  const slope = q * perMm;
  const square = 1 + slope * slope;
  const half = centreMm + q * slope;
  const root = half * half - square * (centreMm * centreMm + q * q - r * r);
  if (root >= 0) return aheadMm - (half + Math.sqrt(root)) / square;
  // Infinity · 0 where the pupil is at infinity, so by the reciprocal: r²/(P − c).
  const limbAheadMm = (r * r * perMm) / (1 - centreMm * perMm);
  return r - limbAheadMm;
}

/**
 * What a slide along a tilted plane adds: speed × duration × sin t; the part of the way that leads
 * along the axis. Speed mm/s, time s, tilt rad. 2 mm/s for 60 s along a film 4° off drifts 8.4 mm.
 */
export function slideTravelMm(speedMmPerS: number, durationS: number, tiltRad: number): number {
  return Math.abs(speedMmPerS) * durationS * Math.sin(tiltRad);
}

/** What a movement adds that leans `offAxisRad` off the axis: speed × duration × cos; 0 rad is along it. */
export function axialTravelMm(speedMmPerS: number, durationS: number, offAxisRad = 0): number {
  return Math.abs(speedMmPerS) * durationS * Math.cos(offAxisRad);
}
