/** The film itself: its colours, and how long it lasts. */

import { prepareSwatches, type Swatches } from '../film/colour.ts';
import { HOLDERS, type Holder, usualLife } from '../film/life.ts';
import { bandsOver } from '../film/orders.ts';
import { colourSequence } from '../film/sequence.ts';
import { sphereDepthMm } from '../optics/needed-depth.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown } from './figure.ts';
import { type FilmLayer, filmBands, isOrdered, layerOf, viewOf } from './film-share.ts';
import { type Makers, once } from './lazily.ts';
import { mirrorKind } from './mirror-kind.ts';
import { isNo } from './not-applicable.ts';
import { pupilDistanceMm } from './optical.ts';
import type { FilmColours, FilmFigures, OpticalFigures, SharpnessFigures } from './shot-figures.ts';
import { natureOf } from './subject-kinds.ts';

/** Swatches over a range of thicknesses: enough that neighbours look alike. */
const SWATCHES = 24;

const NO_FILM = isNo('film');

/** Makers of the film's figures, each called when its figure is asked for. */
export function filmFigures(
  bench: Bench,
  optical: OpticalFigures,
  sharpness: SharpnessFigures,
): Makers<FilmFigures> {
  const isFilm = natureOf(bench.subject)?.isFilm === true;
  const where = <V>(make: () => Figure<V>) => once((): Figure<V> => (isFilm ? make() : NO_FILM));
  const layer = layerOf(bench);
  const coloured = <V>(make: (of: FilmLayer) => Figure<V>) =>
    once((): Figure<V> => (layer ? make(layer) : NO_FILM));
  const lifeS = where(() => lifeOf(bench));
  const domeDepthMm = where(() => domeDepth(bench, optical));
  return {
    filmColours: coloured((of) => coloursOf(bench, of)),
    filmBands: coloured(() => filmBands(bench)),
    lifeS,
    shareOfLife: where(() => derive([takeS(bench), lifeS()], (take, life) => take / life)),
    domeDepthMm,
    flatSavesStops: where(() =>
      derive([domeDepthMm(), sharpness.usableDepthMm], (dome, there) =>
        Math.max(0, 2 * Math.log2(dome / there)),
      ),
    ),
  };
}

/**
 * The depth that a dome as wide as the film would need in this frame, mm, and that a flat film
 * saves. Only for level films whose width is known.
 */
function domeDepth(bench: Bench, optical: OpticalFigures): Figure<number> {
  const { subject } = bench;
  if (!subject || mirrorKind(bench) !== 'film' || ifKnown(subject.fields.orientation) !== 'level')
    return isNo('levelFilm');
  return derive(
    [figureOf(subject.fields.size, subject.name), optical.fieldMm, pupilDistanceMm(bench, optical)],
    (size, [width, height], distance) =>
      sphereDepthMm({
        radiusMm: Math.min(size.width, size.height) / 2,
        halfDiagonalMm: Math.hypot(width, height) / 2,
        pupilDistanceMm: distance,
      }),
  );
}

/**
 * The lifetime that the plan gives, else the shortest that is usual for its orientation and
 * holder.
 */
function lifeOf({ subject }: Bench): Figure<number> {
  if (!subject) return NO_FILM;
  const { lifetime, orientation, holder } = subject.fields;
  if (lifetime.state !== 'missing') return figureOf(lifetime, subject.name);
  const stance = ifKnown(orientation);
  const held = HOLDERS.find((each): each is Holder => each === ifKnown(holder));
  const life = stance && held ? usualLife(stance, held) : null;
  if (life === null) return figureOf(lifetime, subject.name) as Figure<never>;
  if (life.kind === 'hours')
    return notKnown(message`a level film over a closed vessel lasts up to hours`);
  return known(life.shortestS, [orientation.at, holder.at]);
}

/** Settling time and take, s. */
function takeS({ fields, shot, timeLapse }: Bench): Figure<number> {
  if (timeLapse) return timeLapse.spanS;
  const take = figureOf(fields.take, shot);
  if (!take.known) return take;
  const { duration, settle } = take.value;
  const waits = settle.state === 'missing' ? known(0) : figureOf(settle, message`${shot}'s take`);
  return derive(
    [figureOf(duration, message`${shot}'s take`), waits],
    (runs, settles) => runs + settles,
  );
}

/** The white that the picture is balanced for: the shot's, else the light's own. */
export function balanceOf({ fields }: Bench): number | undefined {
  const value = ifKnown(fields['white-balance']);
  return value === 'auto' ? undefined : value;
}

/** Swatches of the film under the first light of the shot. */
export function swatchesOf(bench: Bench, layer = layerOf(bench)): Figure<Swatches> {
  const { lights, tiltRad } = bench;
  if (!layer) return NO_FILM;
  if (!lights.known) return lights;
  const [light] = lights.value;
  if (!light) return notKnown(message`the shot has no light`);
  return derive(
    [
      viewOf(layer, figureOf(light.fields['colour-temperature'], light.name), tiltRad),
      isOrdered(layer),
    ],
    (view) => {
      try {
        return prepareSwatches(view, balanceOf(bench));
      } catch (error) {
        if (error instanceof RangeError) return notKnown(error.message);
        throw error;
      }
    },
  );
}

function coloursOf(bench: Bench, layer: FilmLayer): Figure<FilmColours> {
  const { thickness, name } = layer;
  if (!isKnown(thickness)) return figureOf(thickness, name) as Figure<never>;
  return derive([figureOf(thickness, name), swatchesOf(bench, layer)], ({ from, to }, swatches) => {
    if (to > 10_000 || from > to)
      return notKnown(message`films thicker than 10 µm show no colours`);
    const steps = from === to ? 2 : SWATCHES;
    return {
      swatches: colourSequence(swatches, from, to, steps).map(({ thicknessNm, xyz, screen }) => ({
        thicknessNm,
        hex: screen.hex,
        xyz: [xyz.x, xyz.y, xyz.z] as const,
      })),
      bands: bandsOver(swatches.film, from, to).map(({ band, fromNm, toNm }) => ({
        band: band.kind === 'order' ? `order ${band.order}` : band.kind,
        fromNm,
        toNm,
      })),
    };
  });
}
