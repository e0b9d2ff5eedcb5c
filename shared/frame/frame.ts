/** A shot's frame before it is shot: traced from the plan alone. */
import type { Bench } from '../figures/bench.ts';
import { derive, type Figure, notKnown } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { pngOf } from './develop.ts';
import { type Gathered, gather } from './gather.ts';
import { type FrameSize, traceFrame } from './trace.ts';

interface ShotFrame extends FrameSize {
  readonly png: Uint8Array;
  /** What it is and what is not in it, in whole sentences. */
  readonly caption: readonly string[];
}

/** Height of a frame of that width, in pixels: at least 1. */
const sizeOf = ({ scene: { camera } }: Gathered, width: number): FrameSize => ({
  width,
  height: Math.max(1, Math.min(width * 4, Math.round((width * camera.heightMm) / camera.widthMm))),
});

/**
 * @param width in pixels, a whole number from 1
 * @returns unknown where there is nothing to draw a frame of
 */
export function frameOf(bench: Bench, figures: ShotFigures, width: number): Figure<ShotFrame> {
  try {
    return derive([gather(bench, figures)], (gathered) => framed(gathered, width));
  } catch (error) {
    // Outside their ranges the formulas say so themselves.
    if (error instanceof RangeError) return notKnown(error.message);
    throw error;
  }
}

function framed(gathered: Gathered, width: number): ShotFrame {
  const size = sizeOf(gathered, width);
  const picture = traceFrame(gathered.scene, size);
  return { ...size, png: pngOf(picture, gathered.caption), caption: gathered.caption };
}
