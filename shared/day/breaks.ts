/**
 * Hours in which nobody works. Building stops for a break and goes on after it; takes stop between
 * two of them, and a take that would run into a break begins after it. All times in whole
 * milliseconds from the start of the day. Nothing here ends earlier for beginning later.
 */

export interface Break {
  readonly from: number;
  readonly to: number;
}

/** In the order of the day, those that touch as one; breaks without length are none. */
export function inOrder(breaks: readonly Break[]): readonly Break[] {
  const sorted = breaks.filter(({ from, to }) => to > from).sort((a, b) => a.from - b.from);
  return sorted.reduce<Break[]>((all, next) => {
    const last = all.at(-1);
    if (last && next.from <= last.to)
      all.splice(-1, 1, { from: last.from, to: Math.max(last.to, next.to) });
    else all.push(next);
    return all;
  }, []);
}

/** From `at` on, when a piece of work can begin that nothing interrupts. */
export function beginsAt(at: number, piece: number, breaks: readonly Break[]): number {
  const needed = Math.max(1, piece);
  return breaks.reduce(
    (begin, { from, to }) => (begin < to && begin + needed > from ? to : begin),
    at,
  );
}

/** When work of equal pieces is done that begins at `at`, outside of every break. */
export function doneAt(at: number, work: number, piece: number, breaks: readonly Break[]): number {
  const each = Math.max(1, piece);
  let [now, left] = [at, work];
  for (const { from, to } of breaks) {
    if (to <= now) continue;
    if (now + left <= from) break;
    left -= Math.max(0, Math.floor((from - now) / each)) * each;
    now = to;
  }
  return now + left;
}

/** How much of the time between two moments is a break. */
export const restBetween = (start: number, end: number, breaks: readonly Break[]): number =>
  breaks.reduce(
    (sum, { from, to }) => sum + Math.max(0, Math.min(end, to) - Math.max(start, from)),
    0,
  );
