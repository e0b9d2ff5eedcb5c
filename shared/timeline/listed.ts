/**
 * The edit as a list of events that each show one stretch of one clip at one speed, one after the
 * other. A dissolve begins with its event, so the incoming clip starts before the cut, on a whole
 * frame; where its speed has none at that place, the dissolve begins later. It is no longer than its
 * event, which a piece of a ramp may make short.
 */
import { placeAt } from './course.ts';
import { type Exact, order } from './exact.ts';
import { type Piece, piecesOf } from './pieces.ts';
import type { LaidCut } from './programme.ts';

export interface ListedEvent {
  readonly cut: LaidCut;
  /** null: nothing is shown. */
  readonly piece: Piece | null;
  /** Frames of the edit. */
  readonly startFrame: number;
  readonly frames: number;
  /** That it begins with; 0: none. */
  readonly dissolveFrames: number;
  /** Of its cut. */
  readonly isFirst: boolean;
}

/** A dissolve that is otherwise than laid out. */
interface ListedDissolve {
  readonly cut: LaidCut;
  readonly frames: number;
}

interface Start {
  /** Frames before the cut, and the whole length. */
  readonly before: number;
  readonly frames: number;
}

const PLAIN: Start = { before: 0, frames: 0 };

/** @param rate frames of the edit a second */
export function listed(
  cuts: readonly LaidCut[],
  rate: Exact,
): {
  readonly events: readonly ListedEvent[];
  readonly dissolves: readonly ListedDissolve[];
} {
  const starts: Start[] = [];
  for (const [index, cut] of cuts.entries()) {
    const previous = cuts[index - 1];
    const start = startOf(cut, rate);
    const fits = !previous || piecesIn(previous, starts[index - 1]!, start, rate) !== null;
    starts.push(fits ? start : PLAIN);
  }
  const events = cuts.flatMap((cut, index) =>
    eventsOf(cut, starts[index]!, starts[index + 1] ?? PLAIN, rate),
  );
  const dissolves = cuts.flatMap((cut, index): ListedDissolve[] => {
    const { before, after } = cut.dissolve;
    const { frames } = starts[index]!;
    return frames === before + after ? [] : [{ cut, frames }];
  });
  return { events, dissolves };
}

function startOf({ course, dissolve, covered }: LaidCut, rate: Exact): Start {
  const { before: wanted, after } = dissolve;
  if (wanted + after === 0) return PLAIN;
  if (order(course.from, course.to) === 0) {
    // Every so many frames of the edit are whole frames of the clip.
    const before = wanted - Number(BigInt(wanted) % course.from.d);
    return { before, frames: before + after };
  }
  const whole = { from: -wanted, to: covered, before: 0, after: 0, rate };
  const first = piecesOf(course, whole)?.[0];
  return first ? { before: wanted, frames: Math.min(wanted + after, first.frames) } : PLAIN;
}

/** @returns null where no piece goes on for long enough into the next dissolve */
function piecesIn(
  { course, covered }: LaidCut,
  start: Start,
  next: Start,
  rate: Exact,
): readonly Piece[] | null {
  const [from, to] = [-start.before, covered - next.before];
  if (to <= from) return next.frames > 0 ? null : [];
  if (order(course.from, course.to) === 0) {
    const place = placeAt(course, from);
    return [
      { at: from, frames: to - from, start: Number(place.n / place.d), perFrame: course.from },
    ];
  }
  const pieces = piecesOf(course, { from, to, before: 0, after: next.frames, rate });
  const isLongEnough = !pieces?.[0] || pieces[0].frames >= start.frames;
  return isLongEnough ? pieces : null;
}

function eventsOf(cut: LaidCut, start: Start, next: Start, rate: Exact): readonly ListedEvent[] {
  const { startFrame, endFrame, covered, course } = cut;
  const pieces = covered === 0 ? [] : (piecesIn(cut, start, next, rate) ?? []);
  const events = pieces.map((piece, index) => ({
    cut,
    piece,
    startFrame: startFrame + piece.at,
    frames: piece.frames,
    dissolveFrames: index === 0 ? start.frames : 0,
    isFirst: index === 0,
  }));
  const missing = endFrame - startFrame - covered;
  if (missing === 0) return events;
  const gap = { cut, piece: null, startFrame: startFrame + covered, frames: missing };
  return [...events, { ...gap, dissolveFrames: 0, isFirst: course.frames === missing }];
}
