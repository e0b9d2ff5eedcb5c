/** Everything about mirrors, bubbles and films, drawn together. */
import type { Bench } from './bench.ts';
import { bubbleFigures } from './bubble.ts';
import { filmFigures } from './film.ts';
import { addFlatMirrorFigures } from './flat-mirror.ts';
import { addLazily, once } from './lazily.ts';
import { reflectanceOf } from './mirror-kind.ts';
import { strayRatioOf } from './mirror-light.ts';
import type {
  FlatMirrorFigures,
  MirrorFigures,
  OpticalFigures,
  SharpnessFigures,
} from './shot-figures.ts';

export function addMirrorFigures<T extends object>(
  target: T,
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): T & MirrorFigures {
  const bubble = once(() => bubbleFigures(bench, optical, sharpness));
  const film = filmFigures(bench, optical, sharpness);
  const rest: {
    readonly [K in Exclude<keyof MirrorFigures, keyof FlatMirrorFigures>]: () => MirrorFigures[K];
  } = {
    focusBehindNearestMm: () => bubble().focusBehindNearestMm,
    bubbleImages: () => bubble().bubbleImages,
    ...film,
    reflectance: once(() => reflectanceOf(bench)),
    strayRatio: once(() => strayRatioOf(bench)),
  };
  return addLazily(addFlatMirrorFigures(target, bench, optical, sharpness), rest);
}
