/** Depth of field at the subject, along the axis, in mm; `behind` is away from the camera. */
export interface Depth {
  readonly frontMm: number;
  /** Infinity: endless. */
  readonly behindMm: number;
  readonly totalMm: number;
}

/** What the depth of a focused rig follows from, by its effective f-number. */
interface FocusedRig {
  /** m, subject to sensor; ≥ 0. */
  readonly magnification: number;
  /** N_eff, at the sensor; > 0. */
  readonly effectiveFNumber: number;
  /**
   * u, subject to entrance pupil as the subject sees it, mm. Infinity where the pupil stands at infinity,
   * negative where a close-up lens throws its image out beyond the subject.
   */
  readonly pupilDistanceMm: number;
}

/**
 * Geometric depth of field: in front c·N_eff/(m² + c·N_eff/u), behind c·N_eff/(m² − c·N_eff/u), endless
 * where that is not above 0. c the blur that still passes as sharp (diameter on the sensor, mm).
 *
 * In the pupil's form: in front u·c'/(D + c'), behind u·c'/(D − c'), endless behind where D ≤ c', with D
 * the entrance pupil's diameter as the subject sees it and c' = c/m: a point at distance s from the pupil
 * throws a cone on the subject's plane of diameter D·|u − s|/s, and setting that to c' gives both ends.
 * D/u is m/N_eff, by Lagrange's invariant for the cone at the sensor. Close up the sum tends to
 * 2·c·N_eff/m². With m = 0 both ends are endless. A pupil at infinity or beyond the subject needs no
 * case of its own. Exact by geometry for any pupil ratio, converter or close-up; diffraction apart.
 * Source: similar triangles at the entrance pupil, as in S. F. Ray, Applied Photographic Optics,
 * "Depth of field".
 */
export function depthByFNumber(input: FocusedRig & { readonly blurMm: number }): Depth {
  const { blurMm, magnification, effectiveFNumber, pupilDistanceMm } = input;
  const spread = blurMm * effectiveFNumber;
  const convergence = spread / pupilDistanceMm;
  const end = (opening: number) => (opening > 0 ? spread / opening : Number.POSITIVE_INFINITY);
  const frontMm = end(magnification ** 2 + convergence);
  const behindMm = end(magnification ** 2 - convergence);
  return { frontMm, behindMm, totalMm: frontMm + behindMm };
}
