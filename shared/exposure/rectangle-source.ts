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
  return illuminanceAt(corners, ORIGIN, normal);
}

const ORIGIN: Vector = [0, 0, 0];

/**
 * The same at another place of the surface. It is called for every place of a frame, so no vector is made
 * while the whole source is above the horizon there.
 *
 * @param place mm, from where the corners are seen
 */
export function illuminanceAt(corners: readonly Vector[], place: Vector, normal: Vector): number {
  const [px, py, pz] = place;
  const [nx, ny, nz] = normal;
  const level = nx * px + ny * py + nz * pz;
  for (let index = 0; index < corners.length; index++)
    if (dot(corners[index]!, normal) < level)
      return aroundIt(cutOff(corners, place, normal), ORIGIN, normal);
  return aroundIt(corners, place, normal);
}

function aroundIt(corners: readonly Vector[], [px, py, pz]: Vector, [nx, ny, nz]: Vector): number {
  const count = corners.length;
  if (count === 0) return 0;
  const last = corners[count - 1]!;
  let [ax, ay, az] = [last[0] - px, last[1] - py, last[2] - pz];
  let sum = 0;
  for (let index = 0; index < count; index++) {
    const corner = corners[index]!;
    const bx = corner[0] - px;
    const by = corner[1] - py;
    const bz = corner[2] - pz;
    const x = ay * bz - az * by;
    const y = az * bx - ax * bz;
    const z = ax * by - ay * bx;
    const length = Math.sqrt(x * x + y * y + z * z);
    if (length > 0)
      sum +=
        (Math.atan2(length, ax * bx + ay * by + az * bz) * (nx * x + ny * y + nz * z)) / length;
    ax = bx;
    ay = by;
    az = bz;
  }
  return Math.abs(sum) / 2;
}

/** What of the source is above the horizon of a place, seen from there. */
const cutOff = (corners: readonly Vector[], [px, py, pz]: Vector, normal: Vector) =>
  aboveHorizon(
    corners.map((corner): Vector => [corner[0] - px, corner[1] - py, corner[2] - pz]),
    normal,
  );

function aboveHorizon(corners: readonly Vector[], normal: Vector): readonly Vector[] {
  const heights = corners.map((corner) => dot(corner, normal));
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
