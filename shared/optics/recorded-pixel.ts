/** Width and height, in whatever both are counted in. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** The delivered picture's frame, laid into the recorded area as large as it goes; mm. */
function deliveredAreaMm(recordedAreaMm: Extent, delivered: Extent): Extent {
  const scale = Math.min(
    recordedAreaMm.width / delivered.width,
    recordedAreaMm.height / delivered.height,
  );
  return { width: delivered.width * scale, height: delivered.height * scale };
}

/**
 * The pixel that matters, µm on the sensor: the coarser of the recorded and the delivered one, after
 * any crop, since nothing finer than either survives. What is recorded at 4K for HD is judged as HD.
 *
 * Areas in mm, sizes in pixels, all > 0; a size that is not known is left out, and with neither the
 * answer is undefined. Source: sampling; the lower of two Nyquist limits holds.
 */
export function coarserPixelUm(
  recordedAreaMm: Extent,
  recorded: Extent | undefined,
  delivered: Extent | undefined,
): number | undefined {
  const pitches: number[] = [];
  if (recorded !== undefined) {
    pitches.push(recordedAreaMm.width / recorded.width, recordedAreaMm.height / recorded.height);
  }
  if (delivered !== undefined) {
    pitches.push(deliveredAreaMm(recordedAreaMm, delivered).width / delivered.width);
  }
  return pitches.length === 0 ? undefined : 1000 * Math.max(...pitches);
}

/**
 * Circle of confusion where the plan names none, mm: the recorded area's diagonal / 1500, but not below
 * one delivered pixel on the sensor, which no viewer of the delivered picture can see past.
 * Source: diagonal / 1500 is common practice (S. F. Ray, Applied Photographic Optics, from memory, gives 1/1000 to
 * 1/1500 of the diagonal).
 */
export function usualCircleOfConfusionMm(
  recordedAreaMm: Extent,
  delivered: Extent | undefined,
): number {
  const byDiagonalMm = Math.hypot(recordedAreaMm.width, recordedAreaMm.height) / 1500;
  if (delivered === undefined) return byDiagonalMm;
  const pixelMm = deliveredAreaMm(recordedAreaMm, delivered).width / delivered.width;
  return Math.max(byDiagonalMm, pixelMm);
}
