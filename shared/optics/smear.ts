/** What moves during an exposure. */
interface Movement {
  /** Fastest movement across the axis, in the subject and of the camera together, mm/s at the subject. */
  readonly speedMmPerS: number;
  readonly timeS: number;
  readonly magnification: number;
  /** The coarser pixel, µm on the sensor; > 0. */
  readonly pixelUm: number;
}

/**
 * Smear in pixels (the coarser): speed × m × t / pixel. Worst case: all of the movement across the axis,
 * subject and camera in opposite directions. Source: geometry.
 */
export function smearPx({ speedMmPerS, timeS, magnification, pixelUm }: Movement): number {
  return (1000 * Math.abs(speedMmPerS) * magnification * timeS) / pixelUm;
}

/** Speed at the subject, mm/s, of a pan: angle (rad/s) × distance from the pan's axis to the subject (mm). */
export function panSpeedMmPerS(radPerS: number, distanceMm: number): number {
  return Math.abs(radPerS) * distanceMm;
}

/**
 * Jitter in pixels (the coarser): A·m/pixel, A the amplitude of the vibration at the subject, mm, from
 * rest to its end; m magnification; pixel in µm on the sensor, > 0. Source: geometry.
 */
export function jitterPx(amplitudeMm: number, magnification: number, pixelUm: number): number {
  return (1000 * amplitudeMm * magnification) / pixelUm;
}
