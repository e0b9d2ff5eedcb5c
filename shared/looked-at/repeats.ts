/** Frames that repeat the one before, by how much each differs from it. */
import type { SeenRepeat } from './looked.ts';

/** Codes by which two frames differ on average where nothing at all moved but the coding. */
const NOTHING = 0.02;
/** Against its neighbours: under this share of what they differ by. */
const SHARE = 0.08;
/** Codes: under that, neighbours are too quiet to tell a repeat from a rest. */
const QUIET = 0.25;
const NEIGHBOURS = 12;
/** A whole picture that is coded anew in a freeze differs by more, for a frame or two. */
const RECODED = { frames: 2, share: 0.3 };

/** @param differences of each frame from the one before, mean of absolute codes; the first is the second frame's */
export function repeatsIn(differences: ArrayLike<number>): readonly SeenRepeat[] {
  const { length } = differences;
  const moving = Array.from(differences).filter((one) => one > NOTHING);
  const isStillThroughout = moving.length < length * 0.1;
  const usual = median(moving);
  const found: { frame: number; count: number }[] = [];
  const isRecoded = (from: number, to: number, near: number): boolean =>
    to - from <= RECODED.frames &&
    Array.from({ length: to - from }, (_, index) => differences[from + index - 1]!).every(
      (one) => one < RECODED.share * near,
    );
  for (let index = 0; index < length; index++) {
    const difference = differences[index]!;
    const around = median(
      Array.from(
        { length: 2 * NEIGHBOURS + 1 },
        (_, offset) => differences[index - NEIGHBOURS + offset] ?? 0,
      ).filter((one) => one > NOTHING),
    );
    const near = around > 0 ? around : usual;
    const isRepeat =
      difference <= NOTHING
        ? near >= QUIET || isStillThroughout
        : near >= QUIET && difference < SHARE * near;
    if (!isRepeat) continue;
    const last = found.at(-1);
    // The difference of index i is that of frame i + 1.
    if (last && isRecoded(last.frame + last.count, index + 1, near))
      last.count = index + 2 - last.frame;
    else found.push({ frame: index + 1, count: 1 });
  }
  return found;
}

/** 0 of none. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}
