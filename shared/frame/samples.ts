/**
 * Where a pixel's samples go: through the pixel, the pupil and the Airy pattern. The same in every run:
 * a sequence of low discrepancy, moved by a different amount in each pixel.
 */

/**
 * Shares of the additive recurrence in six dimensions, 1/φ, 1/φ², …, φ the root of x⁷ = x + 1.
 * Source: M. Roberts, The unreasonable effectiveness of quasirandom sequences, 2018, generalised
 * golden ratios; from memory.
 */
const PHI = root();
const STEPS = Array.from({ length: 6 }, (_, i) => PHI ** -(i + 1));

function root(): number {
  let x = 1.1;
  for (let step = 0; step < 40; step += 1) x = (1 + x) ** (1 / 7);
  return x;
}

/** One sample: place in the pixel (0 to 1), in the unit pupil, and of its light in the Airy pattern. */
export interface Sample {
  x: number;
  y: number;
  pupilX: number;
  pupilY: number;
  /** In radii of the first dark ring. */
  airyX: number;
  airyY: number;
}

export const newSample = (): Sample => ({ x: 0, y: 0, pupilX: 0, pupilY: 0, airyX: 0, airyY: 0 });

/** A number that says nothing of its place, 0 to 1 (integer hash by multiplication and shifts). */
function scattered(column: number, row: number, salt: number): number {
  let h = Math.imul(column, 0x9e3779b1) ^ Math.imul(row, 0x85ebca6b) ^ Math.imul(salt, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return ((h ^ (h >>> 15)) >>> 0) / 2 ** 32;
}

const moved = (index: number, axis: number, by: number): number => {
  const at = by + (index + 1) * STEPS[axis]!;
  return at - Math.floor(at);
};

/** Writes the sample of that number in a pixel. `spread`: whether the Airy pattern matters. */
export function sampleAt(
  column: number,
  row: number,
  index: number,
  spread: boolean,
  sample: Sample,
): void {
  const [a, b] = [scattered(column, row, 1), scattered(column, row, 2)];
  sample.x = moved(index, 0, a);
  sample.y = moved(index, 1, b);
  const radius = Math.sqrt(moved(index, 2, scattered(column, row, 3)));
  const turn = 2 * Math.PI * moved(index, 3, scattered(column, row, 4));
  sample.pupilX = radius * Math.cos(turn);
  sample.pupilY = radius * Math.sin(turn);
  if (!spread) return;
  const reach = airyRadius(moved(index, 4, a));
  const round = 2 * Math.PI * moved(index, 5, b);
  sample.airyX = reach * Math.cos(round);
  sample.airyY = reach * Math.sin(round);
}

/** First dark ring of the Airy pattern, in v = π·r/(λ·N). */
const FIRST_DARK = 3.831705970207512;

/** Rings past this hold 2 % of the light; it is laid on the last. */
const LAST_V = 30;
const RINGS = 600;

/**
 * Share of the light within v: 1 − J0²(v) − J1²(v).
 * Source: Lord Rayleigh 1881; M. Born and E. Wolf, Principles of Optics, ch. 8.5.2.
 */
const within = Array.from({ length: RINGS + 1 }, (_, i) => {
  const v = (i / RINGS) * LAST_V;
  return 1 - bessel(0, v) ** 2 - bessel(1, v) ** 2;
});

/** J_n(x) = (1/π)·∫ cos(nτ − x·sin τ) dτ from 0 to π (Bessel's integral), by the midpoint rule. */
function bessel(n: number, x: number): number {
  const points = 64;
  let sum = 0;
  for (let i = 0; i < points; i += 1) {
    const t = (Math.PI * (i + 0.5)) / points;
    sum += Math.cos(n * t - x * Math.sin(t));
  }
  return sum / points;
}

/** Radius, in those of the first dark ring, that a share of the light lies within. */
export function airyRadius(share: number): number {
  let [low, high] = [0, RINGS];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (within[middle]! <= share) low = middle;
    else high = middle;
  }
  const [a, b] = [within[low]!, within[high]!];
  const part = b > a ? Math.min(1, (share - a) / (b - a)) : 1;
  return (((low + part) / RINGS) * LAST_V) / FIRST_DARK;
}
