/** How evenly the lights cover the frame. A lamp close to the subject lights it less evenly. */
import { unevenStops } from '../exposure/unevenness.ts';
import { filmPoint, filmSurface } from '../mirror/film-surface.ts';
import { type Source, sourceOutline } from '../mirror/source.ts';
import type { Vec } from '../mirror/vector.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, known, notKnown } from './figure.ts';
import type { Makers } from './lazily.ts';
import { errorBy } from './light.ts';
import { sourceOf, weightOn } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { scatters } from './moved-light.ts';
import { pupilDistanceMm } from './optical.ts';
import type { EvennessFigures, OpticalFigures, TimeFigures } from './shot-figures.ts';
import { shinesThrough } from './through.ts';

/** Places across the frame and down it, its edges among them. */
const PLACES = 13;

export function evennessFigures(
  bench: Bench,
  optical: OpticalFigures,
  time: TimeFigures,
): Makers<EvennessFigures> {
  return { unevennessStops: () => unevennessOf(bench, optical, time) };
}

/**
 * Over the whole frame of a tilted subject that scatters light. A mirror-like subject shows the
 * luminance of the light's face, which is the same from everywhere. It is even as far as the face
 * glows evenly and fills the frame.
 */
function unevennessOf(
  bench: Bench,
  optical: OpticalFigures,
  { shutterSeconds }: TimeFigures,
): Figure<number> {
  const { lights, tiltRad, tiltAxis } = bench;
  if (mirrorKind(bench) !== undefined) return derive([scatters(bench)], () => 0);
  if (!lights.known) return lights;
  // Through a clear subject a face is as bright from everywhere, as in a mirror.
  if (lights.value.length > 0 && lights.value.every((light) => shinesThrough(light, bench)))
    return derive([scatters(bench)], () => 0);
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const faces = derive(lights.value.map(sourceOf), (...all): readonly Source[] => all);
  // The brightness of a single light doesn't matter; that of several weights them against each
  // other.
  const errors: Figure<readonly number[]> =
    lights.value.length === 1
      ? known([0])
      : derive(
          lights.value.map((light) => errorBy(light, bench, optical, shutterSeconds)),
          (...all): readonly number[] => all,
        );
  // If the subject faces the lens, the frame lies in the plane of the subject from every viewpoint.
  const isSquare = tiltRad.known && tiltRad.value === 0;
  const distance = isSquare ? known(Number.POSITIVE_INFINITY) : pupilDistanceMm(bench, optical);
  return derive(
    [optical.fieldMm, distance, tiltRad, faces, errors, scatters(bench)],
    (fieldMm, pupilMm, tilt, sources, stops) => {
      const dark = sources.findIndex((source) => weightOn(source, tilt, tiltAxis) === 0);
      if (dark >= 0)
        return notKnown(message`${lights.value[dark]!.name} shines on the back of the subject`);
      const surface = filmSurface(tilt, tiltAxis);
      const places = placesOf(fieldMm).map((at) =>
        isSquare ? at : filmPoint(surface, at, [0, 0, pupilMm])?.at,
      );
      const seen = places.filter((place): place is Vec => place !== undefined);
      if (seen.length < places.length) return notKnown(message`the frame looks past the subject`);
      return unevenStops(
        sources.map((source, index) => ({
          outline: sourceOutline(source),
          atMiddle: 2 ** stops[index]!,
        })),
        seen,
        surface.normal,
      );
    },
  );
}

/** Places of the frame in the plane of focus, from edge to edge. */
function placesOf([width, height]: readonly [width: number, height: number]): readonly Vec[] {
  const steps = Array.from({ length: PLACES }, (_, step) => step / (PLACES - 1) - 0.5);
  return steps.flatMap((x) => steps.map((y): Vec => [x * width, y * height, 0]));
}
