/** The share of a light that a film reflects, by the thickness that the plan gives. */
import { D65_K } from '../film/daylight.ts';
import { averageReflectance, THICKEST_NM } from '../film/reflectance.ts';
import { bandsOfShare, type FilmBandShare, meanShare } from '../film/returned.ts';
import { prepareFilm } from '../film/tristimulus.ts';
import { waterIndex } from '../film/water.ts';
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

/** Where n is counted for what is seen as a whole. */
const MIDDLE_NM = 550;

/** n of the film or surface; left out: water's. */
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

const averageOf = (index: number | undefined, tiltRad: number): number =>
  averageReflectance(index ?? waterIndex(MIDDLE_NM), Math.abs(tiltRad));

const EVERY_FILM = {};
/** Water's index is not one number; none is written so. */
const WATER = 0;
/** A search through tilts needs about a hundred values of one film again and again. */
const MOST_FILMS = 1024;

/** Calculated once for each film, tilt and light. Three numbers identify it, whatever the shot. */
const meanOf = remembered(
  (_: object, lightK: number, tilt: number, index: number, from: number, to: number): number => {
    const n = index === WATER ? undefined : index;
    const thick = averageOf(n, tilt);
    if (from >= THICKEST_NM) return thick;
    const mean = meanShare(filmFor(lightK, tilt, n), from, Math.min(to, THICKEST_NM));
    // Above 10 µm the colours merge: a thicker film reflects the mean over all thicknesses.
    const beyond = to > THICKEST_NM ? (to - THICKEST_NM) / (to - from) : 0;
    return mean + (thick - mean) * beyond;
  },
  MOST_FILMS,
);

const bandsOf = remembered(
  (_: object, lightK: number, tilt: number, index: number, from: number, to: number) =>
    bandsOfShare(filmFor(lightK, tilt, index === WATER ? undefined : index), from, to),
);

const filmFor = (lightK: number, tiltRad: number, index: number | undefined) =>
  prepareFilm({ lightK, incidenceRad: Math.abs(tiltRad), ...(index !== undefined && { index }) });

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
    derive([filmOf(bench), colourOf(bench, light)], ([tilt, index, from, to], lightK) =>
      from > THICKEST_NM
        ? notKnown(message`films thicker than 10 µm show no colours`)
        : bandsOf(EVERY_FILM, lightK, tilt, index, from, Math.min(to, THICKEST_NM)),
    ),
  );
}

function colourOf({ lights }: Bench, light: LightInUse | undefined): Figure<number> {
  if (light) return figureOf(light.fields['colour-temperature'], light.name);
  return lights.known ? notKnown(message`the shot has no light`) : lights;
}

type Film = readonly [tiltRad: number, index: number, fromNm: number, toNm: number];

function filmOf(bench: Bench): Figure<Film> {
  const { subject, tiltRad } = bench;
  if (!subject) return silent;
  return derive(
    [figureOf(subject.fields.thickness, subject.name), tiltRad, indexOf(bench)],
    ({ from, to }, tilt, index): Film => [Math.abs(tilt), index ?? WATER, from, to],
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
