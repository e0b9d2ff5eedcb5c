/** Depth along the axis that a subject needs to be sharp from end to end, in mm. */

/** A flat subject, leaning. All ≥ 0; tilt under π/2. */
export interface TiltedPlane {
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

/** A sphere seen from its front. */
export interface Sphere {
  readonly radiusMm: number;
  /** Half the diagonal of what the frame takes in at its front, mm. */
  readonly halfDiagonalMm: number;
  /** u, its nearest point to the entrance pupil, mm; Infinity allowed. */
  readonly pupilDistanceMm: number;
}

/**
 * A sphere from its nearest point to the field's corner, r − √(r² − q²), at most to the visible limb,
 * r − r²/(u + r). r radius, q half-diagonal of the field, u nearest point to entrance pupil; mm, > 0.
 * Source: Pythagoras; the tangent from the pupil touches at r²/(u + r) ahead of the centre.
 */
export function sphereDepthMm({ radiusMm, halfDiagonalMm, pupilDistanceMm }: Sphere): number {
  const toLimbMm = radiusMm - radiusMm ** 2 / (pupilDistanceMm + radiusMm);
  if (halfDiagonalMm >= radiusMm) return toLimbMm;
  const toCornerMm = radiusMm - Math.sqrt(radiusMm ** 2 - halfDiagonalMm ** 2);
  return Math.min(toCornerMm, toLimbMm);
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
