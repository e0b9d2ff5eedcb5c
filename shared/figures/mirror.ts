/** All figures of mirrors, bubbles and films together. */
import type { Bench } from './bench.ts';
import { bubbleFigures } from './bubble.ts';
import { filmFigures } from './film.ts';
import { flatMirrorFigures } from './flat-mirror.ts';
import { type Makers, once } from './lazily.ts';
import { isGloss, mirrorKind, reflectanceOf } from './mirror-kind.ts';
import { strayRatioOf } from './mirror-light.ts';
import { isNo } from './not-applicable.ts';
import type { MirrorFigures, OpticalFigures, SharpnessFigures } from './shot-figures.ts';

const no = (what: Parameters<typeof isNo>[0]) => {
  const figure = isNo(what);
  return () => figure;
};

/** The same for every subject that is no mirror of any kind; `image` is why none of its mirror image is known. */
const without = (image: 'mirror' | 'gloss'): Makers<MirrorFigures> => {
  const flat = no(image === 'gloss' ? 'gloss' : 'flatMirror');
  return {
    mirrorView: flat,
    leastTiltRad: flat,
    greatestTiltByDepthRad: flat,
    litTiltsRad: flat,
    tiltWindow: flat,
    neededLight: flat,
    darkFrame: flat,
    lostByLight: flat,
    shade: flat,
    focusBehindNearestMm: no('bubble'),
    bubbleImages: no('bubble'),
    filmColours: no('film'),
    filmBands: no('film'),
    lifeS: no('film'),
    shareOfLife: no('film'),
    domeDepthMm: no('film'),
    flatSavesStops: no('film'),
    reflectance: no('mirror'),
    strayRatio: no(image),
  };
};

const NO_MIRROR = without('mirror');
const GLOSS = without('gloss');

export function mirrorFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): Makers<MirrorFigures> {
  if (isGloss(bench)) return { ...GLOSS, reflectance: once(() => reflectanceOf(bench)) };
  if (mirrorKind(bench) === undefined) return NO_MIRROR;
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
