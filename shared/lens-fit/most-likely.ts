/**
 * What is most likely true of a few unknowns, by what was believed of them before and by what was
 * measured since: the maximum a posteriori of Gaussians, by Gauss-Newton with numeric derivatives.
 * How sure it is then follows from the Hessian there.
 * Source: A. Tarantola, Inverse Problem Theory, "The least-squares criterion"; J. Nocedal and
 * S. Wright, Numerical Optimization, "The Gauss-Newton method".
 */
import { backward, cholesky, dot, type Matrix, solved, type Vector } from './cholesky.ts';

/** What is believed of an unknown before anything was measured. */
export interface Belief {
  readonly middle: number;
  /** One standard deviation, > 0. */
  readonly sigma: number;
}

/** One measured value. */
export interface Datum {
  readonly value: number;
  /** One standard deviation, > 0. */
  readonly sigma: number;
  /** What it would be with these unknowns; NaN: they can't be. */
  predict(unknowns: Vector): number;
}

export interface Likely {
  readonly values: Vector;
  /**
   * Directions whose squares sum up to the covariance: one standard deviation along each of them,
   * independently, is the whole of what is uncertain. The k-th moves the unknowns up to the k-th.
   */
  readonly axes: Matrix;
}

/** A share of a standard deviation: far above rounding, and what is measured is straight over it. */
const STEP = 1e-3;
const MOST_STEPS = 40;
const MOST_HALVINGS = 12;
/** A step of less than this share of a standard deviation changes nothing that anybody reads. */
const SETTLED = 1e-5;

export function mostLikely(beliefs: readonly Belief[], data: readonly Datum[]): Likely {
  // In standard deviations from what was believed, so that all unknowns are alike.
  const unscaled = (scaled: Vector): Vector =>
    beliefs.map(({ middle, sigma }, index) => middle + sigma * scaled[index]!);
  const missesAt = (scaled: Vector): Vector => {
    const values = unscaled(scaled);
    return data.map(({ value, sigma, predict }) => (predict(values) - value) / sigma);
  };
  const badness = (scaled: Vector, misses: Vector): number =>
    dot(scaled, scaled) + dot(misses, misses);
  const slopesAt = (scaled: Vector): Matrix => {
    const columns = scaled.map((_, index) => {
      const ahead = missesAt(moved(scaled, index, STEP));
      const behind = missesAt(moved(scaled, index, -STEP));
      // At the brink of what can be traced a value says nothing about which way to go.
      return ahead.map((miss, at) => finite((miss - behind[at]!) / (2 * STEP)));
    });
    return data.map((_, at) => columns.map((column) => column[at]!));
  };

  let at: Vector = beliefs.map(() => 0);
  let misses = missesAt(at);
  let now = badness(at, misses);
  for (let step = 0; step < MOST_STEPS; step++) {
    const slopes = slopesAt(at);
    const downhill = at.map(
      (value, index) =>
        -value -
        dot(
          slopes.map((row) => row[index]!),
          misses,
        ),
    );
    const whole = solved(cholesky(hessian(slopes, at.length)), downhill);
    if (Math.sqrt(dot(whole, whole)) < SETTLED) break;
    let taken = 0;
    for (let halving = 0, share = 1; halving < MOST_HALVINGS; halving++, share /= 2) {
      const there = at.map((value, index) => value + share * whole[index]!);
      const then = missesAt(there);
      const bad = badness(there, then);
      if (!(bad < now)) continue;
      [at, misses, now, taken] = [there, then, bad, share];
      break;
    }
    if (taken === 0) break;
  }
  const lower = cholesky(hessian(slopesAt(at), at.length));
  const axes = at.map((_, axis) => {
    const unit = at.map((_, index) => (index === axis ? 1 : 0));
    return backward(lower, unit).map((share, index) => share * beliefs[index]!.sigma);
  });
  return { values: unscaled(at), axes };
}

/**
 * The unknowns so far along each axis of what is uncertain of them.
 *
 * @param stands standard deviations, one an axis; those left out are 0
 */
export const valuesAt = ({ values, axes }: Likely, stands: Vector): Vector =>
  values.map((value, unknown) =>
    axes.reduce((sum, axis, index) => sum + (stands[index] ?? 0) * axis[unknown]!, value),
  );

/** How far a number that depends on the unknowns is sure: one standard deviation. */
export function sigmaOf({ values, axes }: Likely, predict: (unknowns: Vector) => number): number {
  const slopes = axes.map((axis) => slopeAlong(values, axis, predict));
  return Math.sqrt(dot(slopes, slopes));
}

/** How much a number that depends on the unknowns changes over one standard deviation of an axis. */
function slopeAlong(values: Vector, axis: Vector, predict: (unknowns: Vector) => number): number {
  const at = (share: number): number =>
    predict(values.map((value, index) => value + share * axis[index]!));
  return (at(STEP) - at(-STEP)) / (2 * STEP);
}

const finite = (slope: number): number => (Number.isFinite(slope) ? slope : 0);

const moved = (scaled: Vector, index: number, by: number): Vector =>
  scaled.map((value, at) => (at === index ? value + by : value));

/** I + JᵀJ: what was believed, and what the data add. */
function hessian(slopes: Matrix, size: number): Matrix {
  return Array.from({ length: size }, (_, row) =>
    Array.from(
      { length: size },
      (_, column) =>
        (row === column ? 1 : 0) +
        slopes.reduce((sum, slope) => sum + slope[row]! * slope[column]!, 0),
    ),
  );
}
