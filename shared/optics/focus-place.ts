/**
 * Where to focus so that the nearest and the farthest point are equally blurred: 2·u_n·u_f/(u_n + u_f),
 * measured from the entrance pupil like its inputs (mm, 0 < near ≤ far; far may be Infinity).
 * Close up this is practically the middle of the depth, a little to the near side.
 * Source: D·(u − u_n)/u_n = D·(u_f − u)/u_f, similar triangles at the pupil.
 */
export function focusPlaceMm(nearMm: number, farMm: number): number {
  if (farMm === Number.POSITIVE_INFINITY) return 2 * nearMm;
  return (2 * nearMm * farMm) / (nearMm + farMm);
}

/**
 * The other way round: how far in front of the plane of focus (P from the pupil, mm) the near point of a
 * depth d lies, if the plane shares the depth between both ends: the root between 0 and d of
 * 2·b² − 2·b·(P + d) + P·d = 0, the same similar triangles. d/2 for a pupil at infinity; a little less
 * for one in front of the subject, a little more for one beyond it (P negative).
 */
export function focusBehindNearestMm(planeMm: number, depthMm: number): number {
  if (Math.abs(planeMm) === Number.POSITIVE_INFINITY) return depthMm / 2;
  const root = Math.sign(planeMm) * Math.hypot(planeMm, depthMm);
  return (planeMm * depthMm) / (planeMm + depthMm + root);
}
