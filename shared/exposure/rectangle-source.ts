/** A point or direction, mm or of unit length. */
export type Vector = readonly [x: number, y: number, z: number];

/**
 * Illuminance by a flat, evenly glowing diffuse source over its luminance, E/L in sr, at the origin of a
 * surface with this unit normal: (1/2)·Σ γᵢ·(n·Γᵢ) over the source's edges, γᵢ the angle that an edge
 * subtends and Γᵢ the unit normal of the plane through it and the origin. What lies below the surface's
 * horizon is cut off. Lit from either face; at most π, a source that covers the whole sky.
 *
 * Exact for a Lambertian polygon. Source: J. H. Lambert, Photometria, 1760; E. M. Sparrow and
 * R. D. Cess, Radiation Heat Transfer, contour integration of the angle factor.
 */
export function illuminancePerLuminance(corners: readonly Vector[], normal: Vector): number {
  const seen = aboveHorizon(corners, normal);
  const [nx, ny, nz] = normal;
  let sum = 0;
  // Called for every place of a frame: no vector is made on the way.
  for (let index = 0; index < seen.length; index++) {
    const [ax, ay, az] = seen[index]!;
    const [bx, by, bz] = seen[index + 1 < seen.length ? index + 1 : 0]!;
    const x = ay * bz - az * by;
    const y = az * bx - ax * bz;
    const z = ax * by - ay * bx;
    const length = Math.sqrt(x * x + y * y + z * z);
    if (length === 0) continue;
    sum += (Math.atan2(length, ax * bx + ay * by + az * bz) * (nx * x + ny * y + nz * z)) / length;
  }
  return Math.abs(sum) / 2;
}

function aboveHorizon(corners: readonly Vector[], normal: Vector): readonly Vector[] {
  const heights = corners.map((corner) => dot(corner, normal));
  if (heights.every((height) => height >= 0)) return corners;
  const kept: Vector[] = [];
  for (const [index, corner] of corners.entries()) {
    const after = (index + 1) % corners.length;
    const next = corners[after] as Vector;
    const [here, there] = [heights[index] as number, heights[after] as number];
    if (here >= 0) kept.push(corner);
    if (here * there < 0) {
      const share = here / (here - there);
      kept.push([
        corner[0] + share * (next[0] - corner[0]),
        corner[1] + share * (next[1] - corner[1]),
        corner[2] + share * (next[2] - corner[2]),
      ]);
    }
  }
  return kept;
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
