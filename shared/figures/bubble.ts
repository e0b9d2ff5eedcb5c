/** Bubbles: where to focus, and the images of lens and lights in them, which no tilt can remove. */

import {
  type BubbleView,
  type BubbleWall,
  imageOfOutline,
  rimOutline,
} from '../mirror/bubble-image.ts';
import { sourceOutline } from '../mirror/source.ts';
import type { Vec } from '../mirror/vector.ts';
import { focusBehindNearestMm } from '../optics/focus-place.ts';
import { message } from '../words/message.ts';
import { frontDiameter } from './assumed.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, unknownOf } from './figure.ts';
import { sourceOf } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { isNo } from './not-applicable.ts';
import { pupilDistanceMm } from './optical.ts';
import type {
  BubbleFigures,
  BubbleImage,
  OpticalFigures,
  SharpnessFigures,
} from './shot-figures.ts';

const NO_BUBBLE = isNo('bubble');

export function bubbleFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): BubbleFigures {
  if (mirrorKind(bench) !== 'bubble' || !bench.subject)
    return { focusBehindNearestMm: NO_BUBBLE, bubbleImages: NO_BUBBLE };
  const distance = pupilDistanceMm(bench, optical);
  const behind = derive([distance, sharpness.wholeDepthMm], focusBehindNearestMm);
  return { focusBehindNearestMm: behind, bubbleImages: imagesIn(bench, optical, distance, behind) };
}

function imagesIn(
  bench: Bench,
  optical: OpticalFigures,
  distance: Figure<number>,
  behind: Figure<number>,
): BubbleFigures['bubbleImages'] {
  const { subject, lens, lights, recordedPixels } = bench;
  if (!subject) return NO_BUBBLE;
  if (!lights.known) return lights;
  const diameter = figureOf(subject.fields.diameter, subject.name);
  const rim = lens ? frontDiameter(lens) : unknownOf([optical.trace]);
  const { workingDistanceMm, pupilDiameterMm, fieldMm } = optical;
  const view = derive(
    [diameter, distance, behind, pupilDiameterMm, fieldMm, recordedPixels],
    (size, u, focusBehind, pupilMm, [width], pixels): BubbleView => ({
      radiusMm: size / 2,
      pupilFromCentreMm: u + size / 2 - focusBehind,
      focusFromCentreMm: size / 2 - focusBehind,
      pupilMm,
      pixelsPerMm: pixels.width / width,
    }),
  );
  const rimImages = derive([view, rim, workingDistanceMm], (it, rimMm, room) =>
    bothWalls(it, lens?.name ?? message`the lens`, rimOutline(rimMm, room + it.focusFromCentreMm)),
  );
  const lightImages = lights.value.map((light) =>
    derive([view, sourceOf(light)], (it, source) =>
      bothWalls(it, light.name, sourceOutline(source)),
    ),
  );
  return derive([rimImages, ...lightImages], (...images) => images.flat());
}

const WALLS: readonly BubbleWall[] = ['front', 'rear'];

const bothWalls = (view: BubbleView, of: string, outline: readonly Vec[]): BubbleImage[] =>
  WALLS.flatMap((wall) => {
    const image = imageOfOutline(view, outline, wall);
    return image ? [{ of, wall, ...image }] : [];
  });
