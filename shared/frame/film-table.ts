/** The light that a film returns of one light, by its thickness and the angle, looked up. */
import { averageReflectance, cosInside, THICKEST_NM } from '../film/reflectance.ts';
import type { LinearColour } from '../film/screen.ts';
import { type FilmView, filmTristimulus, prepareFilm } from '../film/tristimulus.ts';
import { waterIndex } from '../film/water.ts';

/** Where n is counted for the path in the film. */
const MIDDLE_NM = 550;

/** A thirtieth of the distance between two bright bands: 0.6 % of a band's height. */
const STEP_NM = 7;
const MOST_STEPS = 800;

type Under = FilmView['under'];

/** What is looked up: linear light, and R, the share returned of the luminance. */
const CHANNELS = 4;

/** What a film returns of a light. */
export interface Returns {
  /** Between which thicknesses the film runs, nm. */
  readonly fromNm: number;
  readonly toNm: number;
  /** Writes light (three parts) and R of a thickness in nm and a cosine of incidence into `out`. */
  read(thicknessNm: number, cosIncidence: number, out: Float64Array): void;
}

/** Angles at which a film without a thickness is calculated, from edge on to square on. */
const MEAN_ANGLES = 32;
/** Cosine of the flattest of them: the formulas end at 89°. */
export const FLATTEST_COS = 0.02;

/**
 * A film of no known thickness: on average over all, without colour of its own.
 *
 * @param under the liquid that it lies on; undefined: it hangs in air
 * @param white linear light of the face itself, of which the film returns R
 */
export function meanReturns(index: number | undefined, under: Under, white: LinearColour): Returns {
  const n = index ?? waterIndex(MIDDLE_NM);
  const below = under === 'water' ? waterIndex(MIDDLE_NM) : under;
  const span = 1 - FLATTEST_COS;
  const shares = Array.from({ length: MEAN_ANGLES + 1 }, (_, i) =>
    averageReflectance(n, Math.acos(FLATTEST_COS + (span * i) / MEAN_ANGLES), below),
  );
  return {
    fromNm: 0,
    toNm: 0,
    read(_, cosIncidence, out) {
      const place = (Math.max(0, cosIncidence - FLATTEST_COS) / span) * MEAN_ANGLES;
      const below = Math.min(MEAN_ANGLES - 1, Math.floor(place));
      const share = shares[below]! + (shares[below + 1]! - shares[below]!) * (place - below);
      for (let i = 0; i < 3; i += 1) out[i] = share * white[i]!;
      out[3] = share;
    },
  };
}

/** Thicknesses of a film, at one angle. */
interface Node {
  readonly cosIncidence: number;
  readonly cosInside: number;
  readonly fromNm: number;
  readonly perNm: number;
  readonly values: Float64Array;
}

interface FilmOfTable {
  readonly lightK: number;
  readonly index: number | undefined;
  readonly under: Under;
  readonly fromNm: number;
  readonly toNm: number;
  /** Cosines of the incidence that occur, 0 to 1. */
  readonly leastCos: number;
  readonly mostCos: number;
  /** How many angles are calculated; at least 2. */
  readonly angles: number;
  /** Linear light of the film's XYZ, of which a perfect white's Y is 100. */
  colourOf(xyz: { readonly x: number; readonly y: number; readonly z: number }): LinearColour;
}

/**
 * A film's colours over thickness at a few angles. Between two angles both are looked up at the
 * thickness that has the same path in the film, d·cos θ′, so that bands are where they belong; only
 * the faces' reflectance is drawn out in a straight line.
 *
 * @throws RangeError where light, index or thickness are outside the formulas' ranges
 */
export class FilmTable implements Returns {
  readonly fromNm: number;
  readonly toNm: number;
  readonly #index: number;
  readonly #nodes: readonly Node[];

  constructor(film: FilmOfTable) {
    this.fromNm = Math.min(film.fromNm, THICKEST_NM);
    this.toNm = Math.min(film.toNm, THICKEST_NM);
    this.#index = film.index ?? waterIndex(MIDDLE_NM);
    const cosines = Array.from(
      { length: film.angles },
      (_, i) => film.leastCos + ((film.mostCos - film.leastCos) * i) / (film.angles - 1),
    );
    const paths = cosines.map((cos) => cosInside(this.#index, Math.acos(cos)));
    this.#nodes = cosines.map((cosIncidence, i) =>
      this.#node(film, cosIncidence, paths[i]!, [
        paths[Math.max(0, i - 1)]!,
        paths[Math.min(paths.length - 1, i + 1)]!,
      ]),
    );
  }

  #node(
    film: FilmOfTable,
    cosIncidence: number,
    inside: number,
    [least, most]: readonly [number, number],
  ): Node {
    const fromNm = (this.fromNm * least) / inside;
    const toNm = Math.min(THICKEST_NM, (this.toNm * most) / inside);
    const steps = Math.max(1, Math.min(MOST_STEPS, Math.ceil((toNm - fromNm) / STEP_NM)));
    const prepared = prepareFilm({
      lightK: film.lightK,
      incidenceRad: Math.acos(cosIncidence),
      ...(film.index !== undefined && { index: film.index }),
      ...(film.under !== undefined && { under: film.under }),
    });
    const values = new Float64Array((steps + 1) * CHANNELS);
    for (let i = 0; i <= steps; i += 1) {
      const xyz = filmTristimulus(prepared, fromNm + ((toNm - fromNm) * i) / steps);
      values.set(film.colourOf(xyz), i * CHANNELS);
      values[i * CHANNELS + 3] = xyz.y / 100;
    }
    const perNm = toNm > fromNm ? steps / (toNm - fromNm) : 0;
    return { cosIncidence, cosInside: inside, fromNm, perNm, values };
  }

  read(thicknessNm: number, cosIncidence: number, out: Float64Array): void {
    const nodes = this.#nodes;
    const n = this.#index;
    const inside = Math.sqrt(1 - (1 - cosIncidence * cosIncidence) / (n * n));
    const last = nodes.length - 1;
    const [first, end] = [nodes[0]!.cosIncidence, nodes[last]!.cosIncidence];
    const along = end > first ? (cosIncidence - first) / (end - first) : 0;
    const place = Math.max(0, Math.min(1, along)) * last;
    const below = Math.min(last - 1, Math.floor(place));
    const share = place - below;
    const [a, b] = [nodes[below]!, nodes[below + 1]!];
    readNode(a, (thicknessNm * inside) / a.cosInside, 1 - share, out, true);
    readNode(b, (thicknessNm * inside) / b.cosInside, share, out, false);
  }
}

function readNode(
  node: Node,
  thicknessNm: number,
  weight: number,
  out: Float64Array,
  isFirst: boolean,
): void {
  const { values, fromNm, perNm } = node;
  const most = values.length / CHANNELS - 1;
  const place = Math.max(0, Math.min(most, (thicknessNm - fromNm) * perNm));
  const below = Math.min(most - 1, Math.floor(place));
  const share = place - below;
  const at = below * CHANNELS;
  for (let i = 0; i < CHANNELS; i += 1) {
    const value = values[at + i]! * (1 - share) + values[at + CHANNELS + i]! * share;
    out[i] = (isFirst ? 0 : out[i]!) + weight * value;
  }
}
