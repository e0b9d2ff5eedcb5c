/** A shot's frame before it is shot: traced from the plan alone. */
import type { Bench } from '../figures/bench.ts';
import { type Figure, known, notKnown } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { captionOf } from './caption.ts';
import { pngOf } from './develop.ts';
import { type Gathered, gather } from './gather.ts';
import { type FrameSize, tracing } from './trace.ts';

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
 * A frame in the making: each step takes about a millisecond.
 *
 * @param width in pixels, a whole number from 1
 * @returns unknown where there is nothing to draw a frame of
 */
export function* framing(
  bench: Bench,
  figures: ShotFigures,
  width: number,
): Generator<undefined, Figure<ShotFrame>> {
  const gathered = gathering(bench, figures);
  if (!gathered.known) return gathered;
  yield;
  const { scene, clipAt } = gathered.value;
  const size = sizeOf(gathered.value, width);
  const picture = yield* tracing(scene, size);
  const caption = captionOf(gathered.value, picture);
  return known({ ...size, png: pngOf(picture, clipAt, caption), caption });
}

function gathering(bench: Bench, figures: ShotFigures): Figure<Gathered> {
  try {
    return gather(bench, figures);
  } catch (error) {
    // Outside their ranges the formulas say so themselves.
    if (error instanceof RangeError) return notKnown(error.message);
    throw error;
  }
}
