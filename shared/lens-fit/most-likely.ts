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
  let at: Vector = beliefs.map(() => 0);
  let misses = missesAt(beliefs, data, at);
  let now = badness(at, misses);
  let slopes: Matrix | undefined;
  for (let step = 0; step < MOST_STEPS; step++) {
    slopes = slopesAt(beliefs, data, at);
    const whole = solved(cholesky(hessian(slopes, at.length)), downhill(slopes, at, misses));
    if (Math.sqrt(dot(whole, whole)) < SETTLED) break;
    const better = stepped(beliefs, data, { at, whole, now });
    if (!better) break;
    ({ at, misses, now } = better);
    slopes = undefined;
  }
  const lower = cholesky(hessian(slopes ?? slopesAt(beliefs, data, at), at.length));
  const axes = at.map((_, axis) => {
    const unit = at.map((_, index) => (index === axis ? 1 : 0));
    return backward(lower, unit).map((share, index) => share * beliefs[index]!.sigma);
  });
  return { values: unscaled(beliefs, at), axes };
}

/** The unknowns in their own units; scaled, they are in standard deviations from what was believed. */
const unscaled = (beliefs: readonly Belief[], scaled: Vector): Vector =>
  scaled.map((value, index) => beliefs[index]!.middle + beliefs[index]!.sigma * value);

/** By how many of its standard deviations each datum is predicted too high. */
function missesAt(beliefs: readonly Belief[], data: readonly Datum[], scaled: Vector): Vector {
  const values = unscaled(beliefs, scaled);
  return data.map((datum) => (datum.predict(values) - datum.value) / datum.sigma);
}

const badness = (scaled: Vector, misses: Vector): number =>
  dot(scaled, scaled) + dot(misses, misses);

/** How the misses change with each unknown: one row a datum, one column an unknown. */
function slopesAt(beliefs: readonly Belief[], data: readonly Datum[], scaled: Vector): Matrix {
  const rows = data.map((): number[] => []);
  for (const column of scaled.keys()) {
    const ahead = missesAt(beliefs, data, moved(scaled, column, STEP));
    const behind = missesAt(beliefs, data, moved(scaled, column, -STEP));
    // At the brink of what can be traced a value says nothing about which way to go.
    for (const [row, slopes] of rows.entries())
      slopes.push(finite((ahead[row]! - behind[row]!) / (2 * STEP)));
  }
  return rows;
}

function downhill(slopes: Matrix, at: Vector, misses: Vector): Vector {
  return at.map((value, column) => {
    let sum = 0;
    for (const [row, miss] of misses.entries()) sum += slopes[row]![column]! * miss;
    return -value - sum;
  });
}

interface Standing {
  readonly at: Vector;
  readonly misses: Vector;
  readonly now: number;
}

/** As far along a step as it makes things better; undefined: it never does. */
function stepped(
  beliefs: readonly Belief[],
  data: readonly Datum[],
  { at, whole, now }: { readonly at: Vector; readonly whole: Vector; readonly now: number },
): Standing | undefined {
  for (let halving = 0, share = 1; halving < MOST_HALVINGS; halving++, share /= 2) {
    const there = at.map((value, index) => value + share * whole[index]!);
    const misses = missesAt(beliefs, data, there);
    const bad = badness(there, misses);
    if (bad < now) return { at: there, misses, now: bad };
  }
  return undefined;
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
    Array.from({ length: size }, (_, column) => {
      let sum = 0;
      for (const slope of slopes) sum += slope[row]! * slope[column]!;
      return (row === column ? 1 : 0) + sum;
    }),
  );
}
