/**
 * Paraxial ray-transfer (ABCD) matrices.
 *
 * A ray is its height y (mm) and its slope θ (rad, small) at a plane across the axis; a piece of the
 * optics takes (y, θ) to (a·y + b·θ, c·y + d·θ). Here rays run from the sensor toward the subject,
 * which is the order in which a rig is written down.
 *
 * Valid where sin θ ≈ θ. Source: E. Hecht, Optics, "Analytical ray tracing"; A. Gerrard and
 * J. M. Burch, Introduction to Matrix Methods in Optics.
 */
export interface RayMatrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

export const nothing: RayMatrix = { a: 1, b: 0, c: 0, d: 1 };

/**
 * A stretch of air, `distanceMm` in mm. A negative distance is allowed: principal planes may stand
 * the other way round than the parts that they belong to.
 */
export function travel(distanceMm: number): RayMatrix {
  return { a: 1, b: distanceMm, c: 0, d: 1 };
}

/** A thin lens of power φ = 1/f, in 1/mm; negative diverges. */
export function thinLens(powerPerMm: number): RayMatrix {
  return { a: 1, b: 0, c: -powerPerMm, d: 1 };
}

/**
 * `first` followed by `next`: the matrix product next · first. (Not called `then`: a module that exports
 * that name is taken for a promise by `import()` and never loads.)
 */
export function followedBy(first: RayMatrix, next: RayMatrix): RayMatrix {
  return {
    a: next.a * first.a + next.b * first.c,
    b: next.a * first.b + next.b * first.d,
    c: next.c * first.a + next.d * first.c,
    d: next.c * first.b + next.d * first.d,
  };
}
