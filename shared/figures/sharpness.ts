/** The depth that is sharp, the depth that has to be, and the effect of diffraction. */
import { bestEffectiveFNumber, judgedBlur, leastBlurUm } from '../optics/best-aperture.ts';
import { depthByFNumber } from '../optics/depth.ts';
import { airyUm, diffractionContrast, nyquistPerMm } from '../optics/diffraction.ts';
import { coarserPixelUm, type Extent, usualCircleOfConfusionMm } from '../optics/recorded-pixel.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, known, notKnown } from './figure.ts';
import { neededDepthMm } from './needed-depth.ts';
import { pupilDistanceMm } from './optical.ts';
import type { OpticalFigures, SharpnessFigures } from './shot-figures.ts';

export function sharpnessFigures(bench: Bench, optical: OpticalFigures): SharpnessFigures {
  const { recordedAreaMm, recordedPixels, givenCircleMm } = bench;
  const { magnification, effectiveFNumber } = optical;
  const delivered = whereGiven(bench.deliveredPixels);
  const circle =
    givenCircleMm.known || givenCircleMm.silent
      ? givenCircleMm
      : derive([recordedAreaMm, delivered], usualCircleOfConfusionMm);
  const distance = pupilDistanceMm(bench, optical);
  const depthBy = (blurMm: Figure<number>) =>
    derive([blurMm, magnification, effectiveFNumber, distance], (blur, m, fNumber, pupilDistance) =>
      depthByFNumber({
        blurMm: blur,
        magnification: m,
        effectiveFNumber: fNumber,
        pupilDistanceMm: pupilDistance,
      }),
    );
  const depth = depthBy(circle);
  const judged = derive([circle, effectiveFNumber], (c, n) => judgedBlur(c, n).blurMm);
  const { whole, needed, travel } = neededDepthMm(bench, optical, distance);
  const pixelUm = derive(
    [recordedAreaMm, recordedPixels, delivered],
    (area, recorded, out) =>
      coarserPixelUm(area, recorded, out) ??
      notKnown(message`no recorded or delivered resolution is known`),
  );
  const contrastAt = (share: number) =>
    derive([pixelUm, effectiveFNumber], (pixel, n) =>
      diffractionContrast(share * nyquistPerMm(pixel), n),
    );
  const best = <T extends number>(compute: (depthMm: number, m: number) => T) =>
    derive([needed, magnification], (depthMm, m) =>
      depthMm > 0 ? compute(depthMm, m) : notKnown(message`no depth is needed`),
    );
  return {
    circleOfConfusionMm: circle,
    depthMm: {
      front: derive([depth], (it) => it.frontMm),
      behind: derive([depth], (it) => it.behindMm),
      total: derive([depth], (it) => it.totalMm),
      needed,
    },
    usableDepthMm: derive([depthBy(judged)], (it) => it.totalMm),
    airyUm: derive([effectiveFNumber], airyUm),
    pixelUm,
    contrast: contrastAt(0.5),
    contrastAtNyquist: contrastAt(1),
    bestEffectiveFNumber: best(bestEffectiveFNumber),
    leastBlurUm: best(leastBlurUm),
    wholeDepthMm: whole,
    travelMm: travel,
  };
}

/** A size that may be left out: undefined instead of not known. */
function whereGiven(size: Figure<Extent>): Figure<Extent | undefined> {
  if (size.known || size.silent) return size;
  return known(undefined);
}
