/** Everything about mirrors, bubbles and films, drawn together. */
import type { Bench } from './bench.ts';
import { bubbleFigures } from './bubble.ts';
import { filmFigures } from './film.ts';
import { flatMirrorFigures } from './flat-mirror.ts';
import { reflectanceOf } from './mirror-kind.ts';
import { strayRatioOf } from './mirror-light.ts';
import type { MirrorFigures, OpticalFigures, SharpnessFigures } from './shot-figures.ts';

export const mirrorFigures = (
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): MirrorFigures => ({
  ...flatMirrorFigures(bench, optical, sharpness),
  ...bubbleFigures(bench, optical, sharpness),
  ...filmFigures(bench, optical, sharpness),
  reflectance: reflectanceOf(bench),
  strayRatio: strayRatioOf(bench),
});
