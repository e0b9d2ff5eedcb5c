/** From XYZ to a colour of the screen. */
import {
  convertLrgbToRgb,
  convertRgbToLrgb,
  convertXyz65ToRgb,
  formatHex,
  modeOklch,
  modeRgb,
  modeXyz65,
  toGamut,
  useMode,
} from 'culori/fn';
import type { Tristimulus } from './colour-matching.ts';

useMode(modeRgb);
useMode(modeXyz65);
useMode(modeOklch);

export interface ScreenColour {
  /** sRGB, 0 to 1. */
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  /** `#rrggbb`. */
  readonly hex: string;
}

/** D65 as sRGB has it (IEC 61966-2-1: x 0.3127, y 0.3290), Y 1. */
export const SCREEN_WHITE: Tristimulus = {
  x: 0.3127 / 0.329,
  y: 1,
  z: (1 - 0.3127 - 0.329) / 0.329,
};

/** Chroma is given up, hue and lightness are kept: CSS Color 4, 13.2 (OKLCh, local clipping). */
const intoGamut = toGamut('rgb', 'oklch');

/**
 * sRGB of a colour given as XYZ with D65's white, Y 1 the screen's white. What the screen can't
 * show is brought into its gamut by the method of CSS Color 4.
 */
export function screenColour({ x, y, z }: Tristimulus): ScreenColour {
  const colour = intoGamut({ mode: 'xyz65', x, y, z });
  // The mapped colour may stick out by the last digit.
  const within = (part: number): number => Math.min(1, Math.max(0, part));
  const [red, green, blue] = [within(colour.r), within(colour.g), within(colour.b)];
  return { red, green, blue, hex: formatHex(colour) };
}

/** Red, green and blue in light, not in the screen's steps: white is 1, more than 1 is brighter. */
export type LinearColour = readonly [red: number, green: number, blue: number];

/**
 * Linear sRGB of a colour given as XYZ with D65's white, Y 1 the screen's white. Nothing is cut off:
 * a colour that the screen can't show has parts below 0 or above 1 (IEC 61966-2-1).
 */
export function linearColour({ x, y, z }: Tristimulus): LinearColour {
  const { r, g, b } = convertRgbToLrgb(convertXyz65ToRgb({ x, y, z }));
  return [r, g, b];
}

/** What the screen is sent for a share of its light: 0 to 1, both cut off at their ends. */
export function screenPart(linear: number): number {
  const part = Math.min(1, Math.max(0, linear));
  return convertLrgbToRgb({ r: part, g: part, b: part }).r;
}
