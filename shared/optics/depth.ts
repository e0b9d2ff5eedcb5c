/** Depth of field at the subject, along the axis, in mm; `behind` is away from the camera. */
export interface Depth {
  readonly frontMm: number;
  /** Infinity: endless. */
  readonly behindMm: number;
  readonly totalMm: number;
}

/** What the depth of a focused rig follows from. */
export interface DepthInputs {
  /** c, diameter of the blur that still passes as sharp, on the sensor, mm; > 0. */
  readonly blurMm: number;
  /** m, subject to sensor; ≥ 0. */
  readonly magnification: number;
  /** D, entrance pupil diameter as the subject sees it, mm; > 0. */
  readonly pupilDiameterMm: number;
  /** u, subject to entrance pupil, mm; > 0, Infinity with m = 0. */
  readonly pupilDistanceMm: number;
}

/**
 * Geometric depth of field in its pupil form. With c' = c/m, the blur circle as seen in the subject's
 * plane: in front u·c'/(D + c'), behind u·c'/(D − c'), endless behind where D ≤ c'.
 *
 * A point at distance s from the pupil throws a cone on the subject's plane of diameter D·|u − s|/s;
 * setting that to c' gives both ends. Exact by geometry for any pupil ratio, converter or close-up as
 * long as D and u are the pupil as the subject sees it; diffraction apart. Close up the sum tends to
 * 2·c·N_eff/m². With m = 0 both ends are endless. Source: similar triangles at the entrance pupil, as in
 * S. F. Ray, Applied Photographic Optics, "Depth of field".
 */
export function depthOfField(inputs: DepthInputs): Depth {
  const { blurMm, magnification, pupilDiameterMm, pupilDistanceMm } = inputs;
  if (magnification === 0 || pupilDistanceMm === Number.POSITIVE_INFINITY) {
    const endless = Number.POSITIVE_INFINITY;
    return { frontMm: endless, behindMm: endless, totalMm: endless };
  }
  const atSubjectMm = blurMm / magnification;
  const frontMm = (pupilDistanceMm * atSubjectMm) / (pupilDiameterMm + atSubjectMm);
  const behindMm =
    pupilDiameterMm > atSubjectMm
      ? (pupilDistanceMm * atSubjectMm) / (pupilDiameterMm - atSubjectMm)
      : Number.POSITIVE_INFINITY;
  return { frontMm, behindMm, totalMm: frontMm + behindMm };
}

/**
 * Diameter of the geometric blur on the sensor, mm, of a point `offsetMm` off the plane in focus
 * (positive: farther away), for the same pupil: m·D·|offset|/(u + offset). offset > −u.
 * Source: as `depthOfField`, read the other way.
 */
export function blurAtMm(inputs: Omit<DepthInputs, 'blurMm'>, offsetMm: number): number {
  const { magnification, pupilDiameterMm, pupilDistanceMm } = inputs;
  return (magnification * pupilDiameterMm * Math.abs(offsetMm)) / (pupilDistanceMm + offsetMm);
}
