/**
 * Cuts laid one after the other onto whole frames. It is each cut's place that is rounded, never
 * its length: lengths in beats have parts of a frame, and rounding each would add up to an edit
 * that runs away from its music.
 */
import { type Exact, nearestWhole, plus, times } from './exact.ts';

export interface OnTrack {
  /** Exact, s from the start of the film. */
  readonly start: Exact;
  readonly end: Exact;
  /** The nearest frames, from 0; `endFrame` is the first that is no longer shown. */
  readonly startFrame: number;
  readonly endFrame: number;
}

/** From `start` (s), for `length` (s), at `rate` in frames per second. */
export function onTrack(start: Exact, length: Exact, rate: Exact): OnTrack {
  const end = plus(start, length);
  return {
    start,
    end,
    startFrame: nearestWhole(times(start, rate)),
    endFrame: nearestWhole(times(end, rate)),
  };
}
