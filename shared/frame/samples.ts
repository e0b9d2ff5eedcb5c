/**
 * Where a pixel's samples go: through the pixel, the pupil and the Airy pattern. The same in every run:
 * a sequence of low discrepancy.
 */
import { once } from '../figures/lazily.ts';

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

/** Numbers of a sample: place in the pixel (0 to 1), in the unit pupil, and in the Airy pattern. */
const PARTS = 6;
const SAMPLES = 256;

/**
 * All samples: x and y in the pixel, x and y in the pupil, and x and y in the Airy pattern, in radii of
 * the first dark ring.
 */
function tableOf(): Float64Array {
  const made = new Float64Array(SAMPLES * PARTS);
  for (let index = 0; index < SAMPLES; index += 1) {
    const at = (axis: number): number => ((index + 1) * STEPS[axis]!) % 1;
    const [radius, turn] = [Math.sqrt(at(2)), 2 * Math.PI * at(3)];
    const [reach, round] = [airyRadius(at(4)), 2 * Math.PI * at(5)];
    made.set(
      [
        ...[at(0), at(1)],
        ...[radius * Math.cos(turn), radius * Math.sin(turn)],
        ...[reach * Math.cos(round), reach * Math.sin(round)],
      ],
      index * PARTS,
    );
  }
  return made;
}

/** Made when the first frame is traced. */
export const samples = once(tableOf);

/**
 * Place of a pixel's sample of that number: its pixel, pupil and Airy parts follow one another. Every
 * pixel has the same ones: a soft edge runs in fine steps then, where it would be grainy otherwise.
 */
export const sampleAt = (index: number): number => (index % SAMPLES) * PARTS;

/** First dark ring of the Airy pattern, in v = π·r/(λ·N). */
const FIRST_DARK = 3.831705970207512;

/** Rings past this hold 2 % of the light; it is laid on the last. */
const LAST_V = 30;
const RINGS = 600;

/**
 * Share of the light within v: 1 − J0²(v) − J1²(v).
 * Source: Lord Rayleigh 1881; M. Born and E. Wolf, Principles of Optics, ch. 8.5.2.
 */
const within = once(() =>
  Array.from({ length: RINGS + 1 }, (_, i) => {
    const v = (i / RINGS) * LAST_V;
    return 1 - bessel(0, v) ** 2 - bessel(1, v) ** 2;
  }),
);

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
function airyRadius(share: number): number {
  const shares = within();
  let [low, high] = [0, RINGS];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (shares[middle]! <= share) low = middle;
    else high = middle;
  }
  const [a, b] = [shares[low]!, shares[high]!];
  const part = b > a ? Math.min(1, (share - a) / (b - a)) : 1;
  return (((low + part) / RINGS) * LAST_V) / FIRST_DARK;
}
