/** Frames at intervals: how many there are, how long they take, and how they play. */

/** Sums of decimals may miss a whole by their last digits: 10 800 s hold 540 intervals of 20 s. */
const SLACK = 1e-9;

/**
 * Whole intervals in a stretch of time, which is the number of frames: one is taken at the start of
 * each.
 *
 * @param durationS T, s; positive
 * @param intervalS i, s; positive
 * @returns T/i, rounded down
 * @throws RangeError where a number isn't positive and finite
 */
export function framesIn(durationS: number, intervalS: number): number {
  assertPositive(durationS, intervalS);
  return Math.floor((durationS / intervalS) * (1 + SLACK));
}

/**
 * How long something takes to cross the frame in the finished picture, when it moves between frames:
 * w/(v·i) frames, at r frames per second.
 *
 * @param speedMmPerS v, at the subject; positive
 * @param intervalS i, s; positive
 * @param widthMm w, of the frame in the plane of focus; positive
 * @param ratePerS r, at which the frames are shown; positive
 * @returns seconds of the finished picture
 * @throws RangeError where a number isn't positive and finite
 */
export function crossingS(
  speedMmPerS: number,
  intervalS: number,
  widthMm: number,
  ratePerS: number,
): number {
  assertPositive(speedMmPerS, intervalS, widthMm, ratePerS);
  return widthMm / (speedMmPerS * intervalS * ratePerS);
}

function assertPositive(...values: readonly number[]): void {
  if (!values.every((value) => value > 0 && Number.isFinite(value)))
    throw new RangeError('intervals, lengths and rates are above 0');
}
