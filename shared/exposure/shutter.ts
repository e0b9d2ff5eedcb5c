/**
 * Shutter angle: the part of a frame's time that it is open, as of a full turn.
 * Source: common practice, from the turning shutter of film cameras.
 */

/** Angle in degrees, 360·t·rate. t in s, rate in frames per second. */
export function shutterAngleDeg(timeS: number, ratePerS: number): number {
  return 360 * timeS * ratePerS;
}

/** Time in s of an angle in degrees at a rate in frames per second: angle/(360·rate). */
export function shutterTimeS(angleDeg: number, ratePerS: number): number {
  return angleDeg / (360 * ratePerS);
}

/** Rounding of a time such as 1/29.97 s must not make it longer than its own frame. */
const ROUNDING = 1e-9;

/** Whether a time is longer than a frame, t > 1/rate, which can't be recorded at that rate. */
export function isLongerThanFrame(timeS: number, ratePerS: number): boolean {
  return timeS * ratePerS > 1 + ROUNDING;
}
