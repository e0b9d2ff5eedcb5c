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

/** The same by the pupil itself. */
interface FocusedPupil {
  readonly magnification: number;
  /** D, entrance pupil diameter as the subject sees it, mm; > 0. */
  readonly pupilDiameterMm: number;
  /** u, as above. */
  readonly pupilDistanceMm: number;
}

/**
 * Geometric depth of field in its pupil form: in front u·c'/(D + c'), behind u·c'/(D − c'), endless behind
 * where D ≤ c'. c the blur that still passes as sharp (diameter on the sensor, mm), c' = c/m the same in
 * the subject's plane.
 *
 * A point at distance s from the pupil throws a cone on the subject's plane of diameter D·|u − s|/s;
 * setting that to c' gives both ends. Close up the sum tends to 2·c·N_eff/m². With m = 0 both ends are
 * endless. Exact by geometry for any pupil ratio, converter or close-up; diffraction apart.
 * Source: similar triangles at the entrance pupil, as in S. F. Ray, Applied Photographic Optics,
 * "Depth of field".
 */
export function depthOfField(input: FocusedPupil & { readonly blurMm: number }): Depth {
  const { blurMm, magnification, pupilDiameterMm, pupilDistanceMm } = input;
  const effectiveFNumber =
    magnification === 0
      ? Number.POSITIVE_INFINITY
      : (magnification * Math.abs(pupilDistanceMm)) / pupilDiameterMm;
  return depthByFNumber({ blurMm, magnification, effectiveFNumber, pupilDistanceMm });
}

/**
 * The same depth by the effective f-number, measured or computed: D/u is m/N_eff, so the ends are
 * c·N_eff/(m² ± c·N_eff/u). A pupil at infinity or beyond the subject needs no case of its own.
 * Source: as `depthOfField`, with Lagrange's invariant for the cone at the sensor.
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

/**
 * Diameter of the geometric blur on the sensor, mm, of a point `offsetMm` off the plane in focus
 * (positive: farther away): m·D·|offset|/|u + offset|, that is m²·|offset|/(N_eff·|1 + offset/u|).
 * Infinity for a point in the pupil itself. Source: as `depthOfField`, read the other way.
 */
export function blurAtMm(rig: FocusedRig, offsetMm: number): number {
  const seen = Math.abs(1 + offsetMm / rig.pupilDistanceMm);
  return (rig.magnification ** 2 * Math.abs(offsetMm)) / (rig.effectiveFNumber * seen);
}
