/** A stack of frames focused one behind the other, from the subject's nearest point on. All lengths in mm. */

/**
 * The step between neighbouring planes of focus: depth × (1 − overlap).
 * Neighbours then share that part of one frame's depth. Planes a whole depth apart just touch,
 * since one frame is sharp behind its plane as far as the next one in front of it together.
 *
 * @param depthMm depth of field of one frame, > 0
 * @param overlap 0 to below 1; common practice is 0.2 to 0.3
 */
export const stackStepMm = (depthMm: number, overlap: number): number => depthMm * (1 - overlap);

/** Rounding of a quotient that is a whole number on paper. */
const ROUNDING = 1e-9;

/**
 * The step that a rail can be set to: the largest multiple of its smallest step that is not above
 * `stepMm`, and at least its smallest step.
 */
export const settableStepMm = (stepMm: number, smallestMm: number): number =>
  Math.max(1, Math.floor(stepMm / smallestMm + ROUNDING)) * smallestMm;

/**
 * Frames from the nearest point to the farthest, both focused: ⌈depth / step⌉ + 1.
 * Common practice: begin on the nearest point and end on or behind the farthest.
 */
export const stackFrames = (neededMm: number, stepMm: number): number =>
  Math.ceil(neededMm / stepMm - ROUNDING) + 1;
