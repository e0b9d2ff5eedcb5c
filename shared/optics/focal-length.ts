/** How near a lens focuses, as printed on it or measured: subject to sensor, and how large it is then. */
export interface ClosestFocus {
  readonly fromSensorMm: number;
  readonly magnification: number;
}

/** What is needed of a lens to know its focal length at any setting of its ring. */
interface FocusingLens {
  /** Focal length at infinity, as printed, mm. */
  readonly focalMm: number;
  readonly closest?: ClosestFocus | undefined;
  /** From the rear principal plane forward to the front one, mm; left out: 0. */
  readonly gapMm?: number | undefined;
  /** By how much that is more at the closest setting, mm; left out: 0. */
  readonly gapGrowsMm?: number | undefined;
  /** How far its course bends between the ends of its ring, see `wayGone`; left out: 0. */
  readonly bend?: number | undefined;
}

/**
 * Distance from subject to sensor of a lens alone: D = f·(2 + m + 1/m) + gap, in mm.
 *
 * f focal length (mm), m magnification (> 0; 0 gives Infinity), gap from the rear principal plane
 * forward to the front one (mm; negative where they are crossed, as in many symmetrical lenses).
 * Source: Gaussian optics of a thick lens (E. Hecht, Optics, "Thick lenses and lens systems"): image
 * side f·(1 + m), counted from the rear plane, subject side f·(1 + 1/m), counted from the front one.
 */
export function subjectToSensorMm(focalMm: number, magnification: number, gapMm = 0): number {
  return focalMm * (2 + magnification + 1 / magnification) + gapMm;
}

/**
 * Focal length at the closest setting, from the lens's own closest distance D (sensor to subject, mm)
 * and the magnification m there: f_c = (D − gap) / (2 + m + 1/m). An internally focusing lens shortens its
 * focal length as it focuses closer ("breathes"); this is by how much. D > 0, m > 0.
 * The gap (mm) is less than D. Source: the equation of `subjectToSensorMm` solved for f.
 */
export function closestFocalMm(closest: ClosestFocus, gapMm = 0): number {
  return (closest.fromSensorMm - gapMm) / subjectToSensorMm(1, closest.magnification);
}

/** The same of a lens that has a closest setting, mm. */
export const lensClosestFocalMm = ({ closest, gapMm = 0, gapGrowsMm = 0 }: FocusingLens): number =>
  closestFocalMm(closest!, gapMm + gapGrowsMm);

/**
 * From the rear principal plane forward to the front one at a setting of the ring, mm: linear in the
 * ring's magnification but for its bend, as the focal length is. A lens that moves as a whole keeps it.
 */
export function presentGapMm(lens: FocusingLens, ringMagnification: number): number {
  const { closest, gapMm = 0, gapGrowsMm = 0 } = lens;
  return closest === undefined || gapGrowsMm === 0
    ? gapMm
    : gapMm + gapGrowsMm * wayGone(lens, ringMagnification / closest.magnification);
}

/** How much of the way between its two ends a lens has gone: halfway, 1/2 + its bend. */
const wayGone = ({ bend = 0 }: FocusingLens, turned: number): number =>
  bend === 0 ? turned : turned + 4 * bend * turned * (1 - turned);

/**
 * Focal length at a setting of the ring, mm: as printed at infinity, f_c at the closest, linear in the
 * ring's magnification m0 between, but for its bend (the model's own assumption; no source gives the
 * course between the two ends). m0 from 0 to the closest magnification. A lens without `closest` keeps
 * its printed one.
 */
export function presentFocalMm(lens: FocusingLens, ringMagnification: number): number {
  if (lens.closest === undefined) return lens.focalMm;
  const turned = ringMagnification / lens.closest.magnification;
  return lens.focalMm + (lensClosestFocalMm(lens) - lens.focalMm) * wayGone(lens, turned);
}
