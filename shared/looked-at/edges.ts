/**
 * How wide the sharpest edges of a picture are, and how narrow an aperture lets them be.
 *
 * The width of an edge is its height over its steepest step from pixel to pixel, px: 1 is a step
 * between two pixels. For a spread of standard deviation s it is √(2π)·s, as the steepest slope of
 * an edge is the peak of its line spread function (J. W. Goodman, Introduction to Fourier Optics).
 */
import { diffractionContrast } from '../optics/diffraction.ts';
import { halfContrastOf } from './spectrum.ts';

/** Codes: lower edges may be noise. */
const LEAST_HEIGHT = 40;
/** Fewer edges than that may all be out of focus, or texture. */
const LEAST_EDGES = 40;
/** Of all edges these are the sharpest: slanted and defocused ones are wider. */
const SHARPEST = 0.1;
/** Lines that are looked at: every so many. */
const STEP = 4;
/** Longer slopes are shading. */
const LONGEST = 160;

/** Steps of the finest pattern that is counted, cycles a pixel. */
const PATTERNS = 1000;
/** Of more edges than that, every so many is taken apart: a spectrum takes a microsecond and more. */
const ALL_OF = 4000;
const ONE_IN = 17;

/** Counts edges by their width, a tenth of a pixel apiece, and by the pattern that they keep. */
export class EdgeMeter {
  readonly #counts = new Float64Array(LONGEST * 10 + 1);
  readonly #patterns = new Float64Array(PATTERNS / 2 + 1);
  #edges = 0;
  #takenApart = 0;

  /** @param grey brightness, line after line */
  add(grey: Uint8Array, width: number, height: number): void {
    for (let y = 0; y < height; y += STEP) this.#along(grey, y * width, 1, width);
    for (let x = 0; x < width; x += STEP) this.#along(grey, x, width, height);
  }

  get widthPx(): number | null {
    if (this.#edges < LEAST_EDGES) return null;
    let left = this.#edges * SHARPEST;
    for (const [tenths, count] of this.#counts.entries()) {
      left -= count;
      if (left <= 0) return tenths / 10;
    }
    return null;
  }

  /** Frequency at which the sharpest edges keep half of their contrast, cycles a pixel. */
  get halfContrast(): number | null {
    if (this.#edges < LEAST_EDGES) return null;
    let left = this.#takenApart * SHARPEST;
    for (let pattern = PATTERNS / 2; pattern >= 0; pattern--) {
      left -= this.#patterns[pattern]!;
      if (left <= 0) return pattern / PATTERNS;
    }
    return null;
  }

  /** Slopes that only rise or only fall, from end to end. */
  #along(grey: Uint8Array, start: number, stride: number, count: number): void {
    let [from, steepest, direction, length] = [grey[start]!, 0, 0, 0];
    let before = from;
    const end = (index: number): void => {
      if (Math.abs(before - from) < LEAST_HEIGHT || length > LONGEST) return;
      this.#edges++;
      const width = Math.abs(before - from) / steepest;
      this.#counts[Math.min(LONGEST * 10, Math.round(width * 10))]!++;
      if (this.#edges > ALL_OF && this.#edges % ONE_IN !== 0) return;
      this.#takenApart++;
      const first = start + (index - 1 - length) * stride;
      const half = halfContrastOf(grey, first, stride, length);
      this.#patterns[Math.round(half * PATTERNS)]!++;
    };
    for (let index = 1; index < count; index++) {
      const value = grey[start + index * stride]!;
      const step = value - before;
      const way = Math.sign(step);
      if (way !== 0 && way !== direction) {
        end(index);
        [from, steepest, direction, length] = [before, 0, way, 0];
      }
      if (Math.abs(step) > steepest) steepest = Math.abs(step);
      length++;
      before = value;
    }
    end(count);
  }
}

const TERMS = 200;

/**
 * Width of the narrowest edge that an aperture lets through to pixels that are filled, px.
 *
 * The steepest step is the line spread over one pixel, so 1/w = 2·∫ D(v)·sinc²(v·p) dv·p over all
 * frequencies v of the pupil's transfer D (`diffractionContrast`); p the pitch of the pixels, µm.
 */
export function narrowestEdgePx(effectiveFNumber: number, pixelUm: number): number {
  // Past four cycles a pixel the pixels themselves leave nothing worth a count.
  const most = 4;
  let sum = 0;
  for (let term = 0; term < TERMS; term++) {
    const cyclesPerPx = ((term + 0.5) / TERMS) * most;
    const sinc = Math.sin(Math.PI * cyclesPerPx) / (Math.PI * cyclesPerPx);
    sum += diffractionContrast((cyclesPerPx * 1000) / pixelUm, effectiveFNumber) * sinc * sinc;
  }
  return 1 / ((2 * sum * most) / TERMS);
}
