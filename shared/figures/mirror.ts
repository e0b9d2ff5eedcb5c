/** Everything about mirrors, bubbles and films, drawn together. */
import type { Bench } from './bench.ts';
import { bubbleFigures } from './bubble.ts';
import { filmFigures } from './film.ts';
import { flatMirrorFigures } from './flat-mirror.ts';
import { type Makers, once } from './lazily.ts';
import { reflectanceOf } from './mirror-kind.ts';
import { strayRatioOf } from './mirror-light.ts';
import type { MirrorFigures, OpticalFigures, SharpnessFigures } from './shot-figures.ts';

export function mirrorFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): Makers<MirrorFigures> {
  const bubble = once(() => bubbleFigures(bench, optical, sharpness));
  return {
    ...flatMirrorFigures(bench, optical, sharpness),
    ...filmFigures(bench, optical, sharpness),
    focusBehindNearestMm: () => bubble().focusBehindNearestMm,
    bubbleImages: () => bubble().bubbleImages,
    reflectance: once(() => reflectanceOf(bench)),
    strayRatio: once(() => strayRatioOf(bench)),
  };
}
