/** How far a frame of a grey card is over- or underexposed against the plan. */
import type { LookedAt } from './looked.ts';

/** Reflectance of the card, and light of its picture where the exposure is right. */
const GREY = 0.18;
/** Light of the picture, between which its transfer is that of ITU-R BT.709 in most profiles. */
const DARKEST = 0.02;
const BRIGHTEST = 0.7;

/**
 * Stops over (+) or under the plan: log2(L / 0.18) − e, with L the light of the middle of the frame
 * by ITU-R BT.709 and e the exposure error that the plan expects.
 *
 * @returns null where the middle is not even, or too dark or bright to tell
 */
export function greyCardStops(
  { middle: { light, isEven } }: LookedAt,
  exposureErrorStops: number,
): number | null {
  if (!isEven || light < DARKEST || light > BRIGHTEST) return null;
  return Math.log2(light / GREY) - exposureErrorStops;
}
