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
}

/**
 * Distance from subject to sensor of a lens alone: D = f·(2 + m + 1/m), in mm.
 *
 * f focal length (mm), m magnification (> 0; 0 gives Infinity). Exact for principal planes that
 * coincide; a real lens differs by their separation. Source: the thin-lens equation,
 * image side f·(1 + m) plus subject side f·(1 + 1/m).
 */
export function subjectToSensorMm(focalMm: number, magnification: number): number {
  return focalMm * (2 + magnification + 1 / magnification);
}

/**
 * Focal length at the closest setting, from the lens's own closest distance D (sensor to subject, mm)
 * and the magnification m there: f_c = D / (2 + m + 1/m). An internally focusing lens shortens its
 * focal length as it focuses closer ("breathes"); this is by how much. D > 0, m > 0.
 * Principal planes are taken to coincide. Source: the thin-lens equation solved for f.
 */
export function closestFocalMm(closest: ClosestFocus): number {
  return closest.fromSensorMm / subjectToSensorMm(1, closest.magnification);
}

/**
 * Focal length at a setting of the ring, mm: as printed at infinity, f_c at the closest, linear in the
 * ring's magnification m0 between (the model's own assumption; no source gives the course between the
 * two ends). m0 from 0 to the closest magnification. A lens without `closest` keeps its printed one.
 */
export function presentFocalMm(lens: FocusingLens, ringMagnification: number): number {
  if (lens.closest === undefined) return lens.focalMm;
  const turned = ringMagnification / lens.closest.magnification;
  return lens.focalMm + (closestFocalMm(lens.closest) - lens.focalMm) * turned;
}
