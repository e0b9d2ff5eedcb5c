/**
 * Cuts laid into the clips of a shot. A cut that says where it begins is taken at its word, in the
 * clip that the shot's cuts have come to; one that does not follows the cut before it of the same
 * shot, with room for both handles, and begins the next clip where it would not fit. So each cut
 * shows something that no other shows, as long as there are clips. Where the best part of a clip is
 * marked, cuts begin there, and go on to the next clip once that part is used.
 */
import { type Exact, least, minus, most, order, plus, ZERO } from './exact.ts';

export interface Wanted {
  /** Where in the clip it begins, s; undefined: wherever it fits. */
  readonly from: Exact | undefined;
  /** Source that it uses, s, and that its joins use before and after it. */
  readonly source: Exact;
  readonly before: Exact;
  readonly after: Exact;
}

/** The best part of a clip, s from its beginning. */
export interface MarkedPart {
  readonly from: Exact;
  readonly to: Exact;
}

interface Material {
  readonly clips: number;
  /** By clip; left out or null: nothing is marked. */
  readonly marked?: readonly (MarkedPart | null)[];
  /** Length of each, s; undefined: not known, so taken to be as long as needed. */
  readonly length: Exact | undefined;
}

export interface Laid {
  /** From 0. */
  readonly clip: number;
  /** s from the beginning of the clip; `end` may lie past the clip's own. */
  readonly start: Exact;
  readonly end: Exact;
  /** Source that is there before `start` and after `end`, s; undefined: not known. Never negative. */
  readonly roomBefore: Exact;
  readonly roomAfter: Exact | undefined;
  /** Source from `start` that the clip has, s: all of it where its length is not known. */
  readonly covered: Exact;
}

/** The cuts of one shot, in the order of the edit. */
export function layCuts(
  cuts: readonly Wanted[],
  { clips, length, marked }: Material,
): readonly Laid[] {
  let clip = 0;
  /** What of the clip is used, handles and all; null: nothing. */
  let used: { readonly from: Exact; readonly to: Exact } | null = null;
  return cuts.map(({ from, source, before, after }) => {
    const room = plus(plus(before, source), after);
    const fits = (at: Exact, upTo: Exact | undefined): boolean =>
      upTo === undefined || order(plus(at, room), upTo) <= 0;
    const opening = (of: number): Exact => most(before, marked?.[of]?.from ?? before);
    let start: Exact = from ?? opening(clip);
    if (from === undefined && used !== null) {
      const next = plus(used.to, before);
      const best = marked?.[clip];
      const isInBest = !best || order(plus(next, source), best.to) <= 0;
      const fitsBefore = !best && fits(ZERO, used.from);
      if (isInBest && fits(used.to, length)) start = next;
      else if (!fitsBefore && clip + 1 < clips) {
        clip++;
        used = null;
        start = opening(clip);
      } else start = fits(used.to, length) || !fits(ZERO, used.from) ? next : before;
    }
    const end = plus(start, source);
    const [first, last] = [minus(start, before), plus(end, after)];
    used = used
      ? { from: least(used.from, first), to: most(used.to, last) }
      : { from: first, to: last };
    const there = clips === 0 ? ZERO : length;
    return {
      clip,
      start,
      end,
      roomBefore: start,
      roomAfter: there && most(ZERO, minus(there, end)),
      covered: there ? most(ZERO, least(source, minus(there, start))) : source,
    };
  });
}

/** Frames that `source` (s) of handle gives at a speed: whole ones, rounded down. */
export const framesOf = (source: Exact, rate: Exact, speed: Exact): number =>
  Number((source.n * rate.n * speed.d) / (source.d * rate.d * speed.n));
