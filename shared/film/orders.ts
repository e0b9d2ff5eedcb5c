/**
 * Where a film stands in the sequence of interference colours.
 *
 * An order ends where the path difference Γ = 2·n·d·cos θ′ is a whole number of wavelengths at
 * 550 nm, as on the interference colour chart (A. Michel-Lévy 1888; same Γ, same colours). The
 * first order's first half holds no colour: black, then grey, then white at the first maximum.
 */

import { firstMaximum } from './first-maximum.ts';
import { requireWithin } from './range.ts';
import { cosInside, THICKEST_NM } from './reflectance.ts';
import { filmTristimulus, type PreparedFilm } from './tristimulus.ts';
import { waterIndex } from './water.ts';

/** Wavelength by which orders are counted, nm. */
const ORDER_NM = 550;

/** Y under which a film counts as black, against its first maximum (common practice). */
const BLACK_SHARE = 0.05;

type FilmBand =
  | { readonly kind: 'black' }
  | { readonly kind: 'grey' }
  /** 1 from the first maximum to the first dark band, and so on. */
  | { readonly kind: 'order'; readonly order: number };

/** Path difference Γ = 2·n·d·cos θ′ in nm, n at 550 nm. */
export function pathDifferenceNm(film: PreparedFilm, thicknessNm: number): number {
  const index = film.view.index ?? waterIndex(ORDER_NM);
  return 2 * index * thicknessNm * cosInside(index, film.view.incidenceRad);
}

/** Thickness of a path difference, nm: the inverse. */
const thicknessOfPathNm = (film: PreparedFilm, pathNm: number): number =>
  pathNm / pathDifferenceNm(film, 1);

/** Thickness up to which the film is black, nm: about 14 for water in daylight. */
export function blackUpToNm(film: PreparedFilm): number {
  const first = firstMaximum(film);
  let [low, high] = [0, first.thicknessNm];
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (filmTristimulus(film, middle).y < BLACK_SHARE * first.y) low = middle;
    else high = middle;
  }
  return high;
}

interface FilmStretch {
  readonly band: FilmBand;
  readonly fromNm: number;
  readonly toNm: number;
}

/**
 * The bands that a range of thicknesses runs through, thinnest first.
 *
 * @param fromNm 0 to `toNm`; where they are equal there is no stretch
 * @param toNm to 10 000
 * @throws RangeError outside
 */
export function bandsOver(
  film: PreparedFilm,
  fromNm: number,
  toNm: number,
): readonly FilmStretch[] {
  requireWithin('the greatest thickness in nm', toNm, 0, THICKEST_NM);
  requireWithin('the least thickness in nm', fromNm, 0, toNm);
  const orders = Math.ceil(pathDifferenceNm(film, toNm) / ORDER_NM);
  const ends: readonly { band: FilmBand; upTo: number }[] = [
    { band: { kind: 'black' }, upTo: blackUpToNm(film) },
    { band: { kind: 'grey' }, upTo: thicknessOfPathNm(film, ORDER_NM / 2) },
    ...Array.from({ length: orders + 1 }, (_, i) => ({
      band: { kind: 'order', order: i + 1 } as const,
      upTo: thicknessOfPathNm(film, ORDER_NM * (i + 1)),
    })),
  ];
  const stretches = ends.map(({ band, upTo }, i) => ({
    band,
    fromNm: Math.max(fromNm, ends[i - 1]?.upTo ?? 0),
    toNm: Math.min(toNm, upTo),
  }));
  return stretches.filter((stretch) => stretch.toNm > stretch.fromNm);
}
