/** White balance: colours of light as the picture shows them. */

import type { Bench, LightInUse } from '../figures/bench.ts';
import { adapted } from '../film/adaptation.ts';
import type { Tristimulus } from '../film/colour-matching.ts';
import { COOLEST_DAYLIGHT_K, D65_K } from '../film/daylight.ts';
import { WARMEST_LIGHT_K } from '../film/light.ts';
import { type LinearColour, linearColour, SCREEN_WHITE } from '../film/screen.ts';
import { whiteOf } from '../film/tristimulus.ts';
import { ifKnown } from '../plan/field.ts';

/** Colours balanced for one white. A light without a colour temperature looks white. */
export interface Balance {
  /** Linear light of XYZ, of which a perfect white's Y is 100, times a factor. */
  colourOf(xyz: Tristimulus, factor: number, light: LightInUse): LinearColour;
  /** Linear colour of a light's own white, its luminance 1. */
  whiteOf(light: LightInUse): LinearColour;
}

/** K of a light; undefined: not given, or outside what spectra are calculated for. */
export const kelvinOf = (light: LightInUse | undefined): number | undefined =>
  light && usable(ifKnown(light.fields['colour-temperature']));

const usable = (kelvin: number | undefined): number | undefined =>
  kelvin !== undefined && kelvin >= WARMEST_LIGHT_K && kelvin <= COOLEST_DAYLIGHT_K
    ? kelvin
    : undefined;

export function balanceOf({ fields, lights }: Bench): Balance {
  const set = ifKnown(fields['white-balance']);
  const first = lights.known ? kelvinOf(lights.value[0]) : undefined;
  const fixedK = typeof set === 'number' ? usable(set) : undefined;
  /** A light of unknown colour is drawn in daylight, to which the picture is balanced for it. */
  const matrixFor = (light: LightInUse): Matrix =>
    kelvinOf(light) === undefined ? matrixOf(D65_K) : matrixOf(fixedK ?? first ?? D65_K);
  return {
    colourOf: (xyz, factor, light) => applied(matrixFor(light), xyz, factor),
    whiteOf: (light) => applied(matrixFor(light), whiteOf(kelvinOf(light) ?? D65_K), 1),
  };
}

type Matrix = readonly [LinearColour, LinearColour, LinearColour];

const kept = new Map<number, Matrix>();
const MOST_KEPT = 16;

/** Columns: what X, Y and Z alone come to. All of it is linear. */
function matrixOf(balancedK: number): Matrix {
  const found = kept.get(balancedK);
  if (found) return found;
  const white = whiteOf(balancedK);
  const one = (x: number, y: number, z: number): LinearColour =>
    linearColour(adapted({ x, y, z }, white, SCREEN_WHITE));
  // The adaptation takes the white's luminance along: 100 becomes the screen's 1.
  const made: Matrix = [one(1, 0, 0), one(0, 1, 0), one(0, 0, 1)];
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(balancedK, made);
  return made;
}

const applied = ([x, y, z]: Matrix, xyz: Tristimulus, factor: number): LinearColour => {
  const part = (i: 0 | 1 | 2): number => factor * (x[i] * xyz.x + y[i] * xyz.y + z[i] * xyz.z);
  return [part(0), part(1), part(2)];
};
