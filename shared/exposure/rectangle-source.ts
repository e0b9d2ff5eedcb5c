/** A point or direction, mm or of unit length. */
export type Vector = readonly [x: number, y: number, z: number];

/** A flat, evenly glowing rectangle by its corners in order around it, mm, seen from the origin. */
type Corners = readonly [Vector, Vector, Vector, Vector];

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
  let sum = 0;
  for (const [index, corner] of seen.entries()) {
    const next = seen[(index + 1) % seen.length] as Vector;
    const edge = cross(corner, next);
    const length = Math.hypot(...edge);
    if (length === 0) continue;
    sum += (Math.atan2(length, dot(corner, next)) * dot(normal, edge)) / length;
  }
  return Math.abs(sum) / 2;
}

/**
 * Corners of a rectangle of this width and height (mm) that faces the origin from `distanceMm` away along
 * z; the common case of a panel turned to the subject.
 */
export function facingRectangle(widthMm: number, heightMm: number, distanceMm: number): Corners {
  const x = widthMm / 2;
  const y = heightMm / 2;
  return [
    [-x, -y, distanceMm],
    [x, -y, distanceMm],
    [x, y, distanceMm],
    [-x, y, distanceMm],
  ];
}

/** A panel turned to the subject, and how the subject is turned from it. */
interface Panel {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Between subject's normal and the direction to the panel's centre, rad; about the panel's height. */
  readonly incidenceRad?: number;
}

/**
 * How much a diffuse subject's light changes, stops, when a panel is moved from one distance to another
 * (mm, > 0) in its own direction; negative: less. Inverse square only where the panel is small:
 * 600 × 400 mm from 500 to 1000 mm loses 1.70 stops, not 2. Source: `illuminancePerLuminance`.
 */
export function movedSourceStops(panel: Panel, fromMm: number, toMm: number): number {
  const incidence = panel.incidenceRad ?? 0;
  const normal: Vector = [Math.sin(incidence), 0, Math.cos(incidence)];
  const at = (distanceMm: number) =>
    illuminancePerLuminance(facingRectangle(panel.widthMm, panel.heightMm, distanceMm), normal);
  return Math.log2(at(toMm) / at(fromMm));
}

function aboveHorizon(corners: readonly Vector[], normal: Vector): readonly Vector[] {
  const kept: Vector[] = [];
  for (const [index, corner] of corners.entries()) {
    const next = corners[(index + 1) % corners.length] as Vector;
    const here = dot(corner, normal);
    const there = dot(next, normal);
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

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
