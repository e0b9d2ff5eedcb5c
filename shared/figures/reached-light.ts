/**
 * The exposure of a flat mirror-like subject, by the lights that the frame shows. A part of the
 * frame that no light reaches is black at any exposure.
 */
import { message } from '../words/message.ts';
import { type Bench, type LightInUse, substitute } from './bench.ts';
import { derive, type Figure, known, notKnown } from './figure.ts';
import { showsLight } from './mirror-light.ts';
import type { LightFigures, LostLight, ShownLight } from './shot-figures.ts';

/**
 * Share of the frame's light from which on there is something to expose for: a spot meter reads 1 to
 * 5 % of a frame (common practice), so on less than 1 % nobody could read the light, and 1 % is as
 * much as may be missing unseen. Below it an ISO would be worked out for a picture that is black.
 */
const LEAST_LIT = 0.01;

/**
 * The exposure where the frame is brightest: a light too small to fill the aperture anywhere counts by
 * the share that it fills there.
 *
 * @param shown the exposure by all lights of the shot, as if each of them were seen
 * @param lost what each light of the shot leaves dark, in their order; where that isn't known, since
 *   its place isn't, the light is taken at its word
 * @param filled the share of the aperture that a light fills where it fills most
 * @param showing the exposure by some of the lights
 */
export function reachedLight(
  bench: Bench,
  shown: ShownLight,
  lost: Figure<readonly Figure<LostLight>[]>,
  filled: (light: LightInUse) => Figure<number>,
  showing: (bench: Bench) => ShownLight,
): Pick<LightFigures, 'exposureErrorStops' | 'isoNeeded'> {
  const { lights } = bench;
  if (!lights.known || !lost.known || lights.value.length === 0) return shown;
  const reaching = lights.value.filter((_, index) => {
    const its = lost.value[index];
    return !its?.known || 1 - its.value.share >= LEAST_LIT;
  });
  const seen = reaching.map((light) => {
    const its = lost.value[lights.value.indexOf(light)];
    // Where all of the frame's light is there, so is the aperture's.
    if (!its?.known || its.value.share === 0 || !showsLight(light, bench)) return light;
    const fill = filled(light);
    if (fill.known && fill.value === 1) return light;
    const dimmedStops = derive([light.dimmedStops, fill], (stops, share) =>
      share > 0 ? stops - Math.log2(share) : stops,
    );
    return { ...light, dimmedStops };
  });
  const isSame =
    seen.length === lights.value.length && seen.every((light, i) => light === lights.value[i]);
  if (isSame) return shown;
  if (seen.length > 0) return showing(substitute(bench, { lights: known(seen, lights.from) }));
  const nothing = notKnown(message`no light of the shot reaches the frame, so nothing exposes it`);
  return { exposureErrorStops: nothing, isoNeeded: nothing };
}
