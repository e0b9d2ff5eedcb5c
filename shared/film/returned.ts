/**
 * What a film returns of the light over a range of thicknesses: luminance factor Y, on average, in
 * its brightest band and in its darkest.
 */
import { requireWithin } from './range.ts';
import { THICKEST_NM, withBare } from './reflectance.ts';
import { filmTristimulus, type PreparedFilm } from './tristimulus.ts';

/** One thickness of a film, and the share of the light that it returns there, R from 0 to 1. */
export interface FilmBandShare {
  readonly thicknessNm: number;
  readonly reflectance: number;
}

/** A range of phases narrower than this, rad, is taken as one: the difference would be rounding. */
const ONE_PHASE = 1e-6;

/**
 * ∫ F·sin²x/(1 + F·sin²x) dx from 0 to x: x − atan(√(1 + F)·tan x)/√(1 + F), the arctangent taken
 * on through every half turn.
 */
function airyIntegral(finesse: number, x: number): number {
  const root = Math.sqrt(1 + finesse);
  const turns = Math.round(x / Math.PI);
  const rest = x - turns * Math.PI;
  return x - (Math.atan2(root * Math.sin(rest), Math.cos(rest)) + turns * Math.PI) / root;
}

/** Airy's sum averaged over the half phase from a to b. */
function meanAiry(finesse: number, a: number, b: number): number {
  if (b - a < ONE_PHASE) {
    const part = finesse * Math.sin((a + b) / 2) ** 2;
    return part / (1 + part);
  }
  return (airyIntegral(finesse, b) - airyIntegral(finesse, a)) / (b - a);
}

/**
 * Mean of Y over a range of thicknesses, as a share of the light, 0 to 1: Airy's sum averaged over
 * the phase in closed form for every wavelength, weighted by the light and ȳ. Every thickness of
 * the range counts alike.
 *
 * @param fromNm 0 to `toNm`
 * @param toNm d, nm, to 10 000
 * @throws RangeError outside
 */
export function meanShare(film: PreparedFilm, fromNm: number, toNm: number): number {
  requireRange(fromNm, toNm);
  let y = 0;
  for (const { halfPhase, finesse, weight } of film.bands) {
    const [a, b] = [halfPhase * fromNm, halfPhase * toNm];
    const { s, p, bare } = finesse;
    y +=
      (weight.y * (withBare(bare.s, meanAiry(s, a, b)) + withBare(bare.p, meanAiry(p, a, b)))) / 2;
  }
  return y / 100;
}

/** Share of the light that one thickness returns, 0 to 1. */
const shareAt = (film: PreparedFilm, thicknessNm: number): number =>
  filmTristimulus(film, thicknessNm).y / 100;

/** A twentieth of the distance between two bright bands: none is stepped over. */
const STEP_NM = 10;

/**
 * The darkest and the brightest band in a range of thicknesses: where the film returns least and
 * most of the light. Good to 1 nm and 0.5 % of the share at a maximum.
 *
 * @param fromNm 0 to `toNm`
 * @param toNm d, nm, to 10 000
 * @throws RangeError outside
 */
export function bandsOfShare(
  film: PreparedFilm,
  fromNm: number,
  toNm: number,
): { readonly darkest: FilmBandShare; readonly brightest: FilmBandShare } {
  requireRange(fromNm, toNm);
  const steps = Math.max(1, Math.ceil((toNm - fromNm) / STEP_NM));
  const step = (toNm - fromNm) / steps;
  const at = (thicknessNm: number): FilmBandShare => ({
    thicknessNm,
    reflectance: shareAt(film, thicknessNm),
  });
  const found = Array.from({ length: steps + 1 }, (_, i) =>
    at(i === steps ? toNm : fromNm + i * step),
  );
  // Between the steps an extreme is where the parabola through three of them has its own.
  for (let i = 1; i < steps; i += 1) {
    const [a, b, c] = [found[i - 1]!.reflectance, found[i]!.reflectance, found[i + 1]!.reflectance];
    if ((b - a) * (c - b) > 0) continue;
    const bend = a - 2 * b + c;
    if (bend !== 0) found.push(at(fromNm + step * (i + (a - c) / (2 * bend))));
  }
  const by = (isBetter: (a: number, b: number) => boolean): FilmBandShare =>
    found.reduce((best, next) => (isBetter(next.reflectance, best.reflectance) ? next : best));
  return { darkest: by((a, b) => a < b), brightest: by((a, b) => a > b) };
}

function requireRange(fromNm: number, toNm: number): void {
  requireWithin('the greatest thickness in nm', toNm, 0, THICKEST_NM);
  requireWithin('the least thickness in nm', fromNm, 0, toNm);
}
