/** The colour of a film as the shot shows it. */
import { adapted } from './adaptation.ts';
import type { Tristimulus } from './colour-matching.ts';
import { firstMaximum } from './first-maximum.ts';
import { SCREEN_WHITE, type ScreenColour, screenColour } from './screen.ts';
import {
  type FilmView,
  filmTristimulus,
  type PreparedFilm,
  prepareFilm,
  whiteOf,
} from './tristimulus.ts';

/**
 * Luminance of the first maximum on the screen, white 1: near white, with room for its own colour.
 * A film returns 7.7 % at most, and nobody exposes it to look so dark.
 */
const FIRST_MAXIMUM_Y = 0.9;

/** How a film's swatches are shown. */
export interface Swatches {
  readonly film: PreparedFilm;
  /** XYZ of the white that the white balance takes for white, Y 1. */
  readonly balancedWhite: Tristimulus;
  /** From absolute Y to the screen's. */
  readonly exposure: number;
}

/**
 * Prepares the swatches of a film: exposed for its first maximum, adapted to the white balance.
 *
 * @param whiteBalanceK the shot's white balance, K; left out: the light's own
 * @throws RangeError where light, white balance, angle or index are outside their ranges
 */
export function prepareSwatches(view: FilmView, whiteBalanceK = view.lightK): Swatches {
  const film = prepareFilm(view);
  const white = whiteOf(whiteBalanceK);
  return {
    film,
    balancedWhite: { x: white.x / white.y, y: 1, z: white.z / white.y },
    exposure: FIRST_MAXIMUM_Y / firstMaximum(film).y,
  };
}

export interface FilmColour {
  readonly thicknessNm: number;
  /** Absolute XYZ, a perfect white 100. */
  readonly xyz: Tristimulus;
  readonly screen: ScreenColour;
}

/**
 * The swatch of one thickness.
 *
 * @param thicknessNm d, 0 to 10 000 nm
 * @throws RangeError outside
 */
export function filmColour(swatches: Swatches, thicknessNm: number): FilmColour {
  const xyz = filmTristimulus(swatches.film, thicknessNm);
  const k = swatches.exposure;
  const exposed = { x: k * xyz.x, y: k * xyz.y, z: k * xyz.z };
  const screen = screenColour(adapted(exposed, swatches.balancedWhite, SCREEN_WHITE));
  return { thicknessNm, xyz, screen };
}
