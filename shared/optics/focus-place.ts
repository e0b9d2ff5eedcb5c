/**
 * How far in front of the plane of focus (P from the pupil, mm) the near point of a depth d lies, if the
 * plane shares the depth between both ends, so that they are equally blurred: the root between 0 and d
 * of 2·b² − 2·b·(P + d) + P·d = 0. d/2 for a pupil at infinity; a little less for one in front of the
 * subject, a little more for one beyond it (P negative).
 * Source: D·b/(P − b) = D·(d − b)/(P + d − b), similar triangles at the pupil.
 */
export function focusBehindNearestMm(planeMm: number, depthMm: number): number {
  if (Math.abs(planeMm) === Number.POSITIVE_INFINITY) return depthMm / 2;
  const root = Math.sign(planeMm) * Math.hypot(planeMm, depthMm);
  return (planeMm * depthMm) / (planeMm + depthMm + root);
}
