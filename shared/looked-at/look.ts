/** Looks at a clip, frame after frame, and keeps nothing but numbers. */
import { EdgeMeter } from './edges.ts';
import { FlickerMeter } from './flicker.ts';
import { colourLight, LIGHT, LOWEST, WHITE } from './light.ts';
import type { LookAsk, LookedAt, SmallFrame } from './looked.ts';
import { median, repeatsIn } from './repeats.ts';
import { SoundMeter } from './sound.ts';

/** Spread of the middle's codes over their mean height above black, under which it is even. */
const EVEN = 0.06;
/** The middle: this share of width and height. */
const MIDDLE = 0.25;

export class Look {
  readonly sound = new SoundMeter();
  readonly edges = new EdgeMeter();
  readonly #flicker: FlickerMeter;
  readonly #light: Float64Array;
  readonly #differences: number[] = [];
  readonly #clipped: number[] = [];
  readonly #crushed: number[] = [];
  readonly #middles: { readonly light: number; readonly isEven: boolean }[] = [];
  readonly #sums = { luma: 0, blue: 0, red: 0 };
  #before: Uint8Array | null = null;

  /** @param lines of each small frame */
  constructor(ask: LookAsk, lines: number) {
    this.#flicker = new FlickerMeter(ask.lampsHz, ask.exposedFps, lines);
    this.#light = new Float64Array(lines);
  }

  get frames(): number {
    return this.#clipped.length;
  }

  add({ width, height, planes }: SmallFrame): void {
    const size = width * height;
    let [over, under, luma, difference] = [0, 0, 0, 0];
    for (let line = 0; line < height; line++) {
      let light = 0;
      for (let at = line * width; at < (line + 1) * width; at++) {
        const code = planes[at]!;
        luma += code;
        light += LIGHT[code]!;
        if (code >= WHITE) over++;
        else if (code <= LOWEST) under++;
        if (this.#before) difference += Math.abs(code - this.#before[at]!);
      }
      this.#light[line] = light / width;
    }
    if (this.#before) this.#differences.push(difference / size);
    this.#before = planes;
    this.#flicker.add(this.#light);
    this.#clipped.push(over / size);
    this.#crushed.push(under / size);
    this.#middles.push(middleOf(planes, width, height));
    this.#sums.luma += luma / size;
    this.#sums.blue += meanOf(planes, size, 2 * size);
    this.#sums.red += meanOf(planes, 2 * size, 3 * size);
  }

  /** null: there was no frame. */
  get seen(): LookedAt | null {
    const { frames } = this;
    if (frames === 0) return null;
    const { luma, blue, red } = this.#sums;
    return {
      frames,
      clipped: median(this.#clipped),
      crushed: median(this.#crushed),
      flicker: this.#flicker.seen,
      repeats: repeatsIn(this.#differences),
      edgePx: this.edges.widthPx,
      halfContrast: this.edges.halfContrast,
      light: colourLight(luma / frames, blue / frames, red / frames),
      middle: {
        light: median(this.#middles.map(({ light }) => light)),
        isEven: this.#middles.every(({ isEven }) => isEven),
      },
      sound: this.sound.heard,
    };
  }
}

function meanOf(bytes: Uint8Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += bytes[at]!;
  return sum / (to - from);
}

function middleOf(
  planes: Uint8Array,
  width: number,
  height: number,
): { readonly light: number; readonly isEven: boolean } {
  const [left, top] = [width, height].map((whole) => Math.floor((whole * (1 - MIDDLE)) / 2));
  let [sum, squares, light, count] = [0, 0, 0, 0];
  for (let y = top!; y < height - top!; y++)
    for (let x = left!; x < width - left!; x++) {
      const code = planes[y * width + x]!;
      sum += code;
      squares += code * code;
      light += LIGHT[code]!;
      count++;
    }
  const mean = sum / count;
  const spread = Math.sqrt(Math.max(0, squares / count - mean * mean));
  return { light: light / count, isEven: spread < EVEN * (mean - LOWEST) };
}
