/** The share of a light that a film reflects, by the thickness that the plan gives. */

import type { Prior } from '../assumptions/assumption.ts';
import { D65_K } from '../film/daylight.ts';
import { averageReflectance, reflectanceEnds, THICKEST_NM } from '../film/reflectance.ts';
import { bandsOfShare, type FilmBandShare, meanShare } from '../film/returned.ts';
import { type FilmView, prepareFilm } from '../film/tristimulus.ts';
import { waterIndex } from '../film/water.ts';
import { ifKnown } from '../plan/field.ts';
import type { Subject } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import {
  derive,
  type Figure,
  figureOf,
  known,
  notKnown,
  silent,
  type UnknownFigure,
} from './figure.ts';
import { remembered } from './remembered.ts';
import { natureOf } from './subject-kinds.ts';

/** Where n is counted for what is seen as a whole. */
const MIDDLE_NM = 550;

/** n of the film, or of the liquid or clear thing; left out: water's. */
export function indexOf({ subject }: Bench): Figure<number | undefined> {
  if (!subject || subject.fields['refractive-index'].state === 'missing') return known(undefined);
  return figureOf(subject.fields['refractive-index'], subject.name);
}

/** From this angle on, a film is seen from its edge, rad, and its reflection is no picture. */
const EDGE_ON_RAD = (89 * Math.PI) / 180;

/** R of films of every thickness together, each alike; from their edge they show nothing. */
export function averageShare(index: number | undefined, tiltRad: number): number | UnknownFigure {
  if (Math.abs(tiltRad) > EDGE_ON_RAD)
    return notKnown(message`at this tilt the film is seen from its edge`);
  try {
    return averageOf(index, tiltRad);
  } catch (error) {
    // No film has such an index; the formula says so itself.
    if (error instanceof RangeError) return notKnown(error.message);
    throw error;
  }
}

const averageOf = (index: number | undefined, tiltRad: number, under = AIR): number =>
  averageReflectance(
    index ?? waterIndex(MIDDLE_NM),
    Math.abs(tiltRad),
    under === AIR ? undefined : under || waterIndex(MIDDLE_NM),
  );

/**
 * A film as it lies in a shot: hanging in air by nature, or on a liquid that says so. `under` is
 * the liquid's n; AIR: there is none.
 */
export interface FilmLayer {
  readonly name: string;
  readonly thickness: Subject['thickness'];
  readonly index: Figure<number | undefined>;
  readonly under: Figure<number | undefined> | typeof AIR;
}

/** The film of a shot's subject; undefined: it has none, or it can't be read. */
export function layerOf(bench: Bench): FilmLayer | undefined {
  const { subject } = bench;
  if (!subject) return undefined;
  const { name, fields } = subject;
  const nature = natureOf(subject);
  if (nature?.isFilm)
    return { name, thickness: fields.thickness, index: indexOf(bench), under: AIR };
  const film = nature?.isLiquid ? ifKnown(fields.film) : undefined;
  if (!film) return undefined;
  return {
    name,
    thickness: film.thickness,
    index: figureOf(film['refractive-index'], message`the film on ${name}`),
    under: indexOf(bench),
  };
}

/** What a film on a liquid returns where its thickness isn't given: on average, at least, at most. */
export function unknownThickness(
  { index, under }: FilmLayer,
  tiltRad: Figure<number>,
): Figure<Prior> {
  if (under === AIR) return silent;
  return inRange(() =>
    derive([index, under, tiltRad], (n, liquid, tilt): Prior | UnknownFigure => {
      if (Math.abs(tilt) > EDGE_ON_RAD)
        return notKnown(message`at this tilt the film is seen from its edge`);
      const [film, below] = [n ?? waterIndex(MIDDLE_NM), liquid ?? waterIndex(MIDDLE_NM)];
      const [low, high] = reflectanceEnds(film, Math.abs(tilt), below);
      return { middle: averageReflectance(film, Math.abs(tilt), below), low, high };
    }),
  );
}

const EVERY_FILM = {};
/** Water's index is not one number; none is written so. */
const WATER = 0;
/** Nor is air, below a film that hangs in it. */
const AIR = -1;
/** A search through tilts needs about a hundred values of one film again and again. */
const MOST_FILMS = 1024;

/** Calculated once for each film, tilt and light. Three numbers identify it, whatever the shot. */
const meanOf = remembered(
  (
    _: object,
    lightK: number,
    tilt: number,
    index: number,
    under: number,
    from: number,
    to: number,
  ): number => {
    const thick = averageOf(index || undefined, tilt, under);
    if (from >= THICKEST_NM) return thick;
    const film = filmFor(lightK, tilt, index, under);
    const mean = meanShare(film, from, Math.min(to, THICKEST_NM));
    // Above 10 µm the colours merge: a thicker film reflects the mean over all thicknesses.
    const beyond = to > THICKEST_NM ? (to - THICKEST_NM) / (to - from) : 0;
    return mean + (thick - mean) * beyond;
  },
  MOST_FILMS,
);

const bandsOf = remembered(
  (
    _: object,
    lightK: number,
    tilt: number,
    index: number,
    under: number,
    from: number,
    to: number,
  ) => bandsOfShare(filmFor(lightK, tilt, index, under), from, to),
);

const filmFor = (lightK: number, tiltRad: number, index: number, under: number) =>
  prepareFilm(filmView(lightK, tiltRad, index || undefined, under));

/** How a film is seen; n left out is water's. */
const filmView = (
  lightK: number,
  tiltRad: number,
  index: number | undefined,
  under: number,
): FilmView => ({
  lightK,
  incidenceRad: Math.abs(tiltRad),
  ...(index !== undefined && { index }),
  ...(under !== AIR && { under: under === WATER ? ('water' as const) : under }),
});

/** The film of a shot under a light of this colour. */
export const viewOf = (
  layer: FilmLayer,
  lightK: Figure<number>,
  tiltRad: Figure<number>,
): Figure<FilmView> => derive([lightK, tiltRad, layer.index, underOf(layer)], filmView);

const underOf = ({ under }: FilmLayer): Figure<number> =>
  under === AIR ? known(AIR) : derive([under], (liquid) => liquid ?? WATER);

/**
 * A film of less index than its liquid begins bright and ends its orders half a wave later: its
 * colours are not counted by orders.
 */
export const isOrdered = (layer: FilmLayer): Figure<true> =>
  derive([layer.index, underOf(layer)], (index, under) =>
    under === AIR || (index ?? waterIndex(MIDDLE_NM)) > (under || waterIndex(MIDDLE_NM))
      ? true
      : notKnown(message`a film of a lower index than its liquid shows no orders of colour`),
  );

/** Warmest and coolest colour temperature of lamps and skies, K. */
const WARM_K = 2000;
const COOL_K = 20_000;
/** What findings of a film's brightness are good to, stops. */
const GOOD_TO_STOPS = 1 / 6;

/**
 * Whether no other colour of light changes the brightness of the film by more than this tolerance,
 * against daylight.
 */
const isAnyLight = (mean: (lightK: number) => number): boolean =>
  [WARM_K, COOL_K].every(
    (lightK) => Math.abs(Math.log2(mean(lightK) / mean(D65_K))) <= GOOD_TO_STOPS,
  );

/**
 * R of a film whose `thickness` is given: the mean of Y over it, under the light's own colour.
 * Where that isn't given the film is judged in daylight, if any other light changes it by less
 * than what findings are good to; a single dark band changes by more, and waits for `colour`.
 */
export function reflectanceByThickness(
  bench: Bench,
  light: LightInUse | undefined,
): Figure<number> {
  const film = filmOf(bench);
  if (!film.known) return film;
  const mean = (lightK: number) => meanOf(EVERY_FILM, lightK, ...film.value);
  return inRange(() =>
    light?.fields['colour-temperature'].state !== 'known' &&
    light?.fields['colour-temperature'].state !== 'invalid' &&
    isAnyLight(mean)
      ? derive([film], () => mean(D65_K))
      : derive([colourOf(bench, light), film], (lightK) => mean(lightK)),
  );
}

/** The darkest and the brightest band of the film, under the first light of the shot. */
export function filmBands(
  bench: Bench,
): Figure<{ readonly darkest: FilmBandShare; readonly brightest: FilmBandShare }> {
  const { lights } = bench;
  const light = lights.known ? lights.value[0] : undefined;
  return inRange(() =>
    derive([filmOf(bench), colourOf(bench, light)], ([tilt, index, under, from, to], lightK) =>
      from > THICKEST_NM
        ? notKnown(message`films thicker than 10 µm show no colours`)
        : bandsOf(EVERY_FILM, lightK, tilt, index, under, from, Math.min(to, THICKEST_NM)),
    ),
  );
}

function colourOf({ lights }: Bench, light: LightInUse | undefined): Figure<number> {
  if (light) return figureOf(light.fields['colour-temperature'], light.name);
  return lights.known ? notKnown(message`the shot has no light`) : lights;
}

type Film = readonly [tiltRad: number, index: number, under: number, fromNm: number, toNm: number];

function filmOf(bench: Bench): Figure<Film> {
  const layer = layerOf(bench);
  if (!layer) return silent;
  return derive(
    [figureOf(layer.thickness, layer.name), bench.tiltRad, layer.index, underOf(layer)],
    ({ from, to }, tilt, index, under): Film => [Math.abs(tilt), index ?? WATER, under, from, to],
  );
}

/** Outside their ranges the formulas say so themselves. */
function inRange<T>(work: () => Figure<T>): Figure<T> {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) return notKnown(error.message);
    throw error;
  }
}
