/** What is not known exactly of a lens, and the lens as it would be with given values of that. */
import type { LensPart } from '../optics/parts.ts';
import type { Vector } from './cholesky.ts';
import type { Belief } from './most-likely.ts';

export interface LensBeliefs {
  /** What is known of it: its length, and by how much it grows. */
  readonly known: Pick<LensPart, 'lengthMm' | 'growsMm'>;
  /**
   * In this order: focal length at infinity (mm), gap between the principal planes (mm), pupil ratio;
   * then, of a lens whose ring turns, closest distance from the sensor (mm), magnification there, what
   * the iris does up close (0 to 1), by how much the gap is more there (mm), and how far its course
   * bends on the way.
   */
  readonly beliefs: readonly Belief[];
}

/** No lens has a smaller one, and at 0 there would be no pupil. */
const LEAST_PUPIL_RATIO = 0.05;

/**
 * The lens with these values, in the order of its beliefs. Values that no lens has (a focal length of
 * 0) are given as they are: nothing can be traced through it, and what it predicts is NaN.
 */
export function lensWith({ known }: LensBeliefs, values: Vector): LensPart {
  // Called thousands of times a fit, so no list is taken apart.
  const closestMm = values[3];
  return {
    kind: 'lens',
    lengthMm: known.lengthMm,
    growsMm: known.growsMm,
    focalMm: values[0]!,
    gapMm: values[1]!,
    gapGrowsMm: values[6] ?? 0,
    bend: values[7] ?? 0,
    pupilRatio: Math.max(LEAST_PUPIL_RATIO, values[2]!),
    closest:
      closestMm === undefined ? undefined : { fromSensorMm: closestMm, magnification: values[4]! },
    irisKeepsSize: values[5] ?? 0,
  };
}

/** Ends that nearly everything lies between are two standard deviations to either side. */
export const believed = (low: number, high: number): Belief => ({
  middle: (low + high) / 2,
  sigma: (high - low) / 4,
});
