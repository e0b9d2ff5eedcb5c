/**
 * Masses in a row: their sum, where they balance, and the moments that they make.
 *
 * Positions are mm along one axis from any origin, masses kg, moments N·m about a point of the axis.
 * Source: static equilibrium, as in OpenStax University Physics vol. 1, ch. 12.
 */
export interface Weight {
  readonly massKg: number;
  readonly atMm: number;
}

/** Standard gravity, m/s² (ISO 80000-3). */
const GRAVITY = 9.80665;

export const totalMassKg = (weights: readonly Weight[]): number =>
  weights.reduce((sum, { massKg }) => sum + massKg, 0);

/**
 * Centre of gravity, mm: Σ m·x / Σ m.
 *
 * @throws RangeError where there is no mass
 */
export function centreOfGravityMm(weights: readonly Weight[]): number {
  const mass = totalMassKg(weights);
  if (!(mass > 0)) throw new RangeError('weights without mass balance nowhere');
  return weights.reduce((sum, { massKg, atMm }) => sum + massKg * atMm, 0) / mass;
}

/** Moment of weights about a point, N·m: positive pulls down what lies ahead of it. */
export const momentNm = (weights: readonly Weight[], aboutMm: number): number =>
  weights.reduce((sum, { massKg, atMm }) => sum + (massKg * GRAVITY * (atMm - aboutMm)) / 1000, 0);
