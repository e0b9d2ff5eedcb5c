/**
 * Dissolves and the handles that they need. A dissolve lies across the cut, half before and half
 * after it, so it makes the film neither longer nor shorter, and both clips have to go on where
 * the cut leaves them. Common practice.
 */
import { type Exact, exact, over, times } from './exact.ts';

export interface JoinFrames {
  /** Frames before the cut in which the incoming clip shows already. */
  readonly before: number;
  /** Frames after the cut in which the outgoing clip shows still. */
  readonly after: number;
}

/** A dissolve of `frames` (0 or more), split at the cut; the odd frame comes after it. */
export const splitJoin = (frames: number): JoinFrames => ({
  before: Math.floor(frames / 2),
  after: Math.ceil(frames / 2),
});

/**
 * Source that `frames` of handle use, s: frames/rate at the speed that the clip has at that end.
 * Never negative.
 */
export const handleSource = (frames: number, rate: Exact, speed: Exact): Exact =>
  times(over(exact(Math.max(0, frames)), rate), speed);
