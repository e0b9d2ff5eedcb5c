/**
 * The exposure of a flat mirror-like subject, by the lights that the frame shows. A part of the
 * frame that no light reaches is black at any exposure.
 */
import { message } from '../words/message.ts';
import { type Bench, substitute } from './bench.ts';
import { type Figure, known, notKnown } from './figure.ts';
import type { LightFigures, LostLight, ShownLight } from './shot-figures.ts';

/**
 * Share of the frame's light from which on there is something to expose for: a spot meter reads 1 to
 * 5 % of a frame (common practice), so on less than 1 % nobody could read the light, and 1 % is as
 * much as may be missing unseen. Below it an ISO would be worked out for a picture that is black.
 */
const LEAST_LIT = 0.01;

/**
 * @param shown the exposure by all lights of the shot, as if each of them were seen
 * @param lost what each light of the shot leaves dark, in their order; where that isn't known, since
 *   its place isn't, the light is taken at its word
 * @param showing the exposure by some of the lights
 */
export function reachedLight(
  bench: Bench,
  shown: ShownLight,
  lost: Figure<readonly Figure<LostLight>[]>,
  showing: (bench: Bench) => ShownLight,
): Pick<LightFigures, 'exposureErrorStops' | 'isoNeeded'> {
  const { lights } = bench;
  if (!lights.known || !lost.known || lights.value.length === 0) return shown;
  const reaching = lights.value.filter((_, index) => {
    const its = lost.value[index];
    return !its?.known || 1 - its.value.share >= LEAST_LIT;
  });
  if (reaching.length === lights.value.length) return shown;
  if (reaching.length > 0)
    return showing(substitute(bench, { lights: known(reaching, lights.from) }));
  const nothing = notKnown(message`no light of the shot reaches the frame, so nothing exposes it`);
  return { exposureErrorStops: nothing, isoNeeded: nothing };
}
