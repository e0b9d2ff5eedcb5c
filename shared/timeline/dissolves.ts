/**
 * Dissolves as long as what is there allows. A dissolve lies across the cut, so it needs frames of
 * the outgoing clip after the cut and of the incoming one before it, and no other dissolve may use
 * the same frames of a cut. One that lacks any of them becomes shorter, on both sides of the cut.
 */
import { type Course, coveredBy, roomAfter, roomBefore } from './course.ts';
import { type JoinFrames, splitJoin } from './join.ts';

interface Joined {
  readonly course: Course;
  /** Frames that its clip has; undefined: not known. */
  readonly available: number | undefined;
  /** The dissolve that it is to begin with. */
  readonly wanted: JoinFrames;
}

/** What made a dissolve shorter. */
export type DissolveLack = 'nothing-before' | 'before' | 'after' | 'own' | 'previous';

export interface Dissolve extends JoinFrames {
  /** null: it is as long as it is to be. */
  readonly lack: DissolveLack | null;
}

/** The dissolves that the cuts begin with, in the order of the edit. */
export function dissolvesOf(cuts: readonly Joined[]): readonly Dissolve[] {
  const dissolves: Dissolve[] = [];
  for (const [index, cut] of cuts.entries())
    dissolves.push(dissolveOf(cut, cuts[index - 1], dissolves.at(-1)?.after ?? 0));
  return dissolves;
}

/** @param used frames of the previous cut that its own dissolve uses */
function dissolveOf(cut: Joined, previous: Joined | undefined, used: number): Dissolve {
  const { before, after } = cut.wanted;
  const wanted = before + after;
  if (wanted === 0) return { before: 0, after: 0, lack: null };
  if (!previous) return { before: 0, after: 0, lack: 'nothing-before' };
  const isWhole = ({ course, available }: Joined): boolean =>
    coveredBy(course, available) === course.frames;
  const covered = coveredBy(cut.course, cut.available);
  const longest: readonly (readonly [DissolveLack, number])[] = [
    ['before', onBefore(covered > 0 ? roomBefore(cut.course, before) : 0)],
    [
      'after',
      onAfter(isWhole(previous) ? roomAfter(previous.course, previous.available, after) : 0),
    ],
    ['own', onAfter(covered)],
    ['previous', isWhole(previous) ? onBefore(previous.course.frames - used) : 0],
  ];
  // A clip that has nothing at all on a side has no dissolve on the other either.
  const hasNone = covered === 0 || !isWhole(previous);
  const [lack, most] = longest.reduce((a, b) => (b[1] < a[1] ? b : a));
  if (!hasNone && most >= wanted) return { before, after, lack: null };
  return { ...splitJoin(hasNone ? 0 : most), lack };
}

/** The longest dissolve that has so many frames on a side of the cut; the odd frame comes after it. */
const onBefore = (frames: number): number => 2 * Math.max(0, frames) + 1;
const onAfter = (frames: number): number => 2 * Math.max(0, frames);
