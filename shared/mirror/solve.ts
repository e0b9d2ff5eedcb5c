/** Where a function of one variable crosses or is least: bracketed, so it always ends. */

/**
 * The least x in [from, to] at which `holds` is true, given that it stays true above; null where
 * it isn't true at `to`. Halved to the last bit that matters.
 */
export function leastWhere(holds: (x: number) => boolean, from: number, to: number): number | null {
  if (holds(from)) return from;
  if (!holds(to)) return null;
  let below = from;
  let above = to;
  for (let step = 0; step < 60; step += 1) {
    const middle = (below + above) / 2;
    if (holds(middle)) above = middle;
    else below = middle;
  }
  return above;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The least value of `f` on [from, to], where it falls and then rises (golden-section search). */
export function minimum(
  f: (x: number) => number,
  from: number,
  to: number,
): { readonly x: number; readonly value: number } {
  let a = from;
  let b = to;
  let left = b - GOLDEN * (b - a);
  let right = a + GOLDEN * (b - a);
  let atLeft = f(left);
  let atRight = f(right);
  for (let step = 0; step < 48; step += 1) {
    if (atLeft <= atRight) {
      b = right;
      right = left;
      atRight = atLeft;
      left = b - GOLDEN * (b - a);
      atLeft = f(left);
    } else {
      a = left;
      left = right;
      atLeft = atRight;
      right = a + GOLDEN * (b - a);
      atRight = f(right);
    }
  }
  const best = [from, to, (a + b) / 2].map((x) => ({ x, value: f(x) }));
  return best.reduce((least, each) => (each.value < least.value ? each : least));
}
