/**
 * Marked shutter speeds in third stops, as reciprocals of seconds. Common practice: the series that
 * cameras are marked with; figures use a time as it is written.
 */
export const MARKED_SHUTTER_RECIPROCALS: readonly number[] = [
  2, 2.5, 3, 4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320, 400,
  500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000,
];

/** A camera without the exact time is set to its mark: 1/125 for 1/120. */
const NEAR_MARK = 0.05;

/** Whether cameras at large are marked with a time so near, s: 1/100 s, not 0.03 s. */
export const isNearMark = (seconds: number): boolean =>
  MARKED_SHUTTER_RECIPROCALS.some((mark) => Math.abs(seconds * mark - 1) < NEAR_MARK);
