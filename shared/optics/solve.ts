/** How finely a course is sampled before it is refined: turning points closer together than this are not told apart. */
const SAMPLES = 64;

/**
 * The smallest x in [from, to] at which `course` takes the value `wanted`; undefined where it never does.
 * Sampled, then bisected to the last bit, so that a course that turns back is no obstacle.
 * Where `course` is NaN there is nothing to find.
 */
export function firstSolution(
  course: (x: number) => number,
  wanted: number,
  from: number,
  to: number,
): number | undefined {
  let low = from;
  let below = course(from) - wanted;
  if (below === 0) return from;
  for (let step = 1; step <= SAMPLES; step++) {
    const high = from + ((to - from) * step) / SAMPLES;
    const above = course(high) - wanted;
    if (above === 0) return high;
    if (below * above < 0) return bisected((x) => course(x) - wanted, low, high, below);
    low = high;
    below = above;
  }
  return undefined;
}

/** The x in [from, to] at which `f` is 0, to the last bit; `atFrom` is f(from), of the other sign than f(to). */
export function bisected(
  f: (x: number) => number,
  from: number,
  to: number,
  atFrom: number,
): number {
  let low = from;
  let high = to;
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) return middle;
    const value = f(middle);
    if (value === 0) return middle;
    if (value * atFrom > 0) low = middle;
    else high = middle;
  }
}

/** Least and greatest value of `course` over [from, to], turning points inside included. */
export function extent(
  course: (x: number) => number,
  from: number,
  to: number,
): { readonly least: number; readonly most: number } | undefined {
  const at = (step: number) => from + ((to - from) * step) / SAMPLES;
  const values = Array.from({ length: SAMPLES + 1 }, (_, step) => course(at(step)));
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const [step, value] of values.entries()) {
    if (Number.isNaN(value)) continue;
    const before = values[step - 1] ?? value;
    const after = values[step + 1] ?? value;
    const turns = (value - before) * (value - after) > 0;
    const refined = turns
      ? turningValue(course, at(step - 1), at(step + 1), value > before)
      : value;
    least = Math.min(least, value, refined);
    most = Math.max(most, value, refined);
  }
  return least <= most ? { least, most } : undefined;
}

/** Golden-section search for the one turning point between `from` and `to`. */
function turningValue(
  course: (x: number) => number,
  from: number,
  to: number,
  isTop: boolean,
): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  const better = (a: number, b: number) => (isTop ? a > b : a < b);
  let low = from;
  let high = to;
  for (let step = 0; step < 60; step++) {
    const left = high - ratio * (high - low);
    const right = low + ratio * (high - low);
    if (better(course(left), course(right))) high = right;
    else low = left;
  }
  return course((low + high) / 2);
}
