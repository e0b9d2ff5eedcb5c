/**
 * A ramp as a run of short pieces of constant speed, for formats that have no ramp. Each begins on a
 * whole frame of the clip and of the edit, and none is more than half a frame of the clip away from
 * the ramp at any frame of the edit. Each is as long as that allows: the speeds that pass within
 * half a frame of every place so far are an interval, which narrows from frame to frame (the usual
 * way to thin out a curve within a tolerance).
 */
import { type Course, placeAt, placeNear } from './course.ts';
import { type Exact, fromWritten, nearestWhole, order, over, toNumber } from './exact.ts';

export interface Piece {
  /** Frame of the cut that it begins with, negative before the cut, and its length. */
  readonly at: number;
  readonly frames: number;
  /** Frame of the clip that it begins with. */
  readonly start: number;
  /** Frames of the clip for each frame of the edit. */
  readonly perFrame: Exact;
}

interface Stretch {
  /** Frames of the cut: the first, and the first after it. */
  readonly from: number;
  readonly to: number;
  /** Frames beyond them in which the outermost pieces have to be right too, for transitions. */
  readonly before: number;
  readonly after: number;
  /** Frames of the edit a second. */
  readonly rate: Exact;
}

/** Half a frame, less what a double may round. */
const TOLERANCE = 0.5 - 1e-6;

/**
 * Frames of a stretch that are looked at one by one. A ramp over more changes so slowly that what lies
 * between two that are looked at is off by less than a double rounds.
 */
const MOST_STEPS = 1_000_000;

/**
 * One piece where the speed is constant and the stretch begins with the cut.
 * @returns null where no run of pieces is near enough in the frames beyond the stretch
 */
export function piecesOf(course: Course, stretch: Stretch): readonly Piece[] | null {
  const { from, to } = stretch;
  if (order(course.from, course.to) === 0 && from === 0)
    return [{ at: 0, frames: to, start: course.start, perFrame: course.from }];
  const pieces: Piece[] = [];
  for (let at = from; at < to; ) {
    const piece = longest(course, at, stretch);
    if (!piece) return null;
    pieces.push(piece);
    at += piece.frames;
  }
  return evenedOut(pieces, course, stretch);
}

/** Of two pieces, for the first: the second begins on another frame of the clip, and may reach less far. */
const SHARES = [0.5, 0.625, 0.75, 0.875];

/**
 * The last piece has what the others left, maybe a single frame, which an editor can't take hold of.
 * It shares with the one before it, unless that is the first, which a dissolve may need as it is.
 */
function evenedOut(pieces: readonly Piece[], course: Course, stretch: Stretch): readonly Piece[] {
  const [previous, last] = pieces.slice(-2);
  if (pieces.length < 3 || !previous || !last || last.frames * 2 >= previous.frames) return pieces;
  for (const share of SHARES) {
    const second = previous.at + Math.ceil(share * (previous.frames + last.frames));
    if (second >= last.at) break;
    const shorter = longest(course, previous.at, { ...stretch, to: second, after: 0 });
    const longer = longest(course, second, stretch);
    if (shorter?.frames === second - previous.at && longer?.frames === stretch.to - second)
      return [...pieces.slice(0, -2), shorter, longer];
  }
  return pieces;
}

function longest(course: Course, at: number, stretch: Stretch): Piece | null {
  const { from, to, before, after, rate } = stretch;
  // The clip has no frame before its first.
  const start = Math.max(0, nearestWhole(placeAt(course, at)));
  const narrowed = (cone: Cone, by: number): Cone =>
    narrow(cone, by, placeNear(course, at + by) - start);
  let cone: Cone = { low: 0, high: Number.POSITIVE_INFINITY };
  if (at === from) for (let by = -1; by >= -before; by--) cone = narrowed(cone, by);
  const step = Math.max(1, Math.floor((to - from) / MOST_STEPS));
  let frames = 0;
  while (at + frames < to) {
    const further = Math.min(frames + step, to - at);
    const next = narrowed(cone, further);
    if (next.low > next.high) break;
    cone = next;
    frames = further;
  }
  if (frames === 0) {
    if (at === from && before > 0) return null;
    const rise = Math.max(0, placeNear(course, at + 1) - start);
    return { at, frames: 1, start, perFrame: roundest({ low: rise, high: rise }, rise, rate) };
  }
  // The ramp's own speed over the piece: a short one has many speeds that are near enough.
  const mean = (placeNear(course, at + frames) - placeNear(course, at)) / frames;
  const piece = (speeds: Cone): Piece => ({
    ...{ at, frames, start },
    perFrame: roundest(speeds, mean, rate),
  });
  if (at + frames < to || after === 0) return piece(cone);
  let whole = cone;
  for (let by = frames + 1; by <= frames + after; by++) whole = narrowed(whole, by);
  if (whole.low <= whole.high) return piece(whole);
  // Two pieces: the second begins nearer to the end and has less to look at.
  const half = Math.ceil(frames / 2);
  return frames === 1 ? null : longest(course, at, { ...stretch, to: at + half, after: 0 });
}

/** Speeds that pass within the tolerance of every place so far. */
interface Cone {
  readonly low: number;
  readonly high: number;
}

/** @param by frames from the beginning of the piece, not 0; `place` frames of the clip from it */
function narrow({ low, high }: Cone, by: number, place: number): Cone {
  const [one, other] = [(place - TOLERANCE) / by, (place + TOLERANCE) / by];
  return { low: Math.max(low, Math.min(one, other)), high: Math.min(high, Math.max(one, other)) };
}

/**
 * The speed of few digits that is nearest to one of them, in frames of the clip a second: short to
 * write, and the same in every reader.
 */
function roundest({ low, high }: Cone, near: number, rate: Exact): Exact {
  const perS = toNumber(rate);
  const inCone = Math.min(Math.max(near, low), high);
  // At the edge of the cone a rounded speed would mostly be outside it.
  const target = (inCone === near ? near : (low + high) / 2) * perS;
  for (let digits = 0; digits <= 9; digits++) {
    const value = Number(target.toFixed(digits));
    // At 0 it would be held, which it isn't.
    const isHeld = value === 0 && target > 0;
    if (!isHeld && value / perS >= low && value / perS <= high)
      return over(fromWritten(value), rate);
  }
  return over(fromWritten(target), rate);
}
