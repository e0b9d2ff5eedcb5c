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
 * The other way round: how far in front of the plane of focus (u from the pupil, mm) the near point
 * of a depth d lies, if the plane shares the depth between both ends. The root of
 * 2·n·(n + d) = u·(2n + d) for the near point n.
 */
export function focusBehindNearestMm(planeMm: number, depthMm: number): number {
  const half = planeMm - depthMm;
  const nearMm = (half + Math.sqrt(half * half + 2 * planeMm * depthMm)) / 2;
  return planeMm - nearMm;
}
