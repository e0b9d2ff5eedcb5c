/**
 * Flicker at a known frequency. A lamp of f hertz under r frames a second shows as brightness that
 * comes and goes |f − r·round(f/r)| times a second, in every line with a phase of its own: a shutter
 * that rolls reads them one after another. So each line is measured alone, by the one term of its
 * discrete Fourier transform (G. Goertzel 1958), over blocks under a Hann window.
 */
import type { SeenFlicker } from './looked.ts';

const BLOCK = 64;
/** Terms beside the one that is asked for, in terms of the block: outside of the window's reach. */
const BESIDE = [-6, -4, 4, 6];
/** A Hann window reaches two terms to each side. */
const REACH = 3;
/** Light under which a line is too dark to tell; reference white is 1. */
const DARK = 0.004;

interface Sought {
  readonly lampHz: number;
  /** Cycles a frame: of the lamp, then those beside it; null: too slow, or too near to half the rate. */
  readonly terms: readonly number[] | null;
  /** Sums of squared depths, for each term. */
  readonly sums: number[];
  lines: number;
}

/** Cycles a frame, 0 to 0.5. */
export function foldedCycles(lampHz: number, fps: number): number {
  const cycles = lampHz / fps;
  return Math.abs(cycles - Math.round(cycles));
}

export class FlickerMeter {
  readonly #sought: readonly Sought[];
  readonly #lines: number;
  readonly #block: Float64Array;
  #filled = 0;
  #blocks = 0;

  /** @param lines of each frame */
  constructor(lampsHz: readonly number[], fps: number | null, lines: number) {
    this.#lines = lines;
    this.#block = new Float64Array(BLOCK * lines);
    this.#sought = [...new Set(lampsHz)].map((lampHz) => ({
      lampHz,
      terms: fps === null ? null : termsFor(foldedCycles(lampHz, fps)),
      sums: [0, ...BESIDE.map(() => 0)],
      lines: 0,
    }));
  }

  /** @param light mean of each line */
  add(light: Float64Array): void {
    if (this.#sought.length === 0) return;
    this.#block.set(light, this.#filled * this.#lines);
    if (++this.#filled < BLOCK) return;
    for (const one of this.#sought) this.#measure(one);
    this.#filled = 0;
    this.#blocks++;
  }

  get seen(): readonly SeenFlicker[] {
    return this.#sought.map(({ lampHz, sums, lines, terms }): SeenFlicker => {
      if (terms === null || lines === 0 || this.#blocks === 0)
        return { lampHz, depth: null, floor: 0 };
      const [own = 0, ...beside] = sums.map((sum) => Math.sqrt(sum / lines));
      return { lampHz, depth: own, floor: Math.max(...beside) };
    });
  }

  #measure(one: Sought): void {
    if (one.terms === null) return;
    for (let line = 0; line < this.#lines; line++) {
      let mean = 0;
      for (let frame = 0; frame < BLOCK; frame++) mean += this.#at(frame, line) / BLOCK;
      if (mean < DARK) continue;
      one.lines++;
      for (const [index, term] of one.terms.entries())
        one.sums[index]! += (this.#amplitude(line, term, mean) / mean) ** 2;
    }
  }

  #at(frame: number, line: number): number {
    return this.#block[frame * this.#lines + line]!;
  }

  #amplitude(line: number, cycles: number, mean: number): number {
    let [real, imaginary] = [0, 0];
    for (let frame = 0; frame < BLOCK; frame++) {
      const value = (this.#at(frame, line) - mean) * WINDOW[frame]!;
      real += value * Math.cos(2 * Math.PI * cycles * frame);
      imaginary += value * Math.sin(2 * Math.PI * cycles * frame);
    }
    return (2 * Math.hypot(real, imaginary)) / WINDOW_SUM;
  }
}

const WINDOW = Float64Array.from(
  { length: BLOCK },
  (_, frame) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (frame + 0.5)) / BLOCK),
);
const WINDOW_SUM = WINDOW.reduce((sum, one) => sum + one, 0);

/** Where neither the scene's own slow changes nor its mirror image at half the rate cover it. */
function termsFor(cycles: number): readonly number[] | null {
  const term = cycles * BLOCK;
  if (term < REACH || term > BLOCK / 2 - 0.5) return null;
  return [term, ...BESIDE.map((by) => term + by)]
    .map((one) => Math.min(BLOCK / 2, Math.max(REACH - 1, one)))
    .map((one) => one / BLOCK);
}
