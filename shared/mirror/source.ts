/** A light's face: where it stands, which way it looks, and its outline. */
import { requirePositive } from './range.ts';
import { add, dot, scale, sub, type Vec } from './vector.ts';

export type Face =
  | { readonly shape: 'rectangle'; readonly widthMm: number; readonly heightMm: number }
  | { readonly shape: 'round'; readonly diameterMm: number };

/**
 * A face stands at `distanceMm` from the subject's centre, raised by `upRad` above the level plane
 * and swung by `acrossRad` to the camera's right, both from the lens axis; it is turned to look at
 * the subject, with its width level.
 */
export interface Source {
  readonly face: Face;
  readonly distanceMm: number;
  /** −π/2 to π/2. */
  readonly upRad: number;
  /** −π to π. */
  readonly acrossRad: number;
}

/** A plane with axes of its own. `normal` looks at the subject; right and up as the camera sees. */
export interface Plane {
  readonly centre: Vec;
  readonly right: Vec;
  readonly up: Vec;
  readonly normal: Vec;
}

/** Direction from the subject's centre: raised by `upRad`, swung right by `acrossRad`. */
const direction = (upRad: number, acrossRad: number): Vec => [
  Math.cos(upRad) * Math.sin(acrossRad),
  Math.sin(upRad),
  Math.cos(upRad) * Math.cos(acrossRad),
];

/** The plane at a distance from the subject's centre, square to the line that joins them. */
export function planeAt(distanceMm: number, upRad: number, acrossRad: number): Plane {
  requirePositive('the distance of the light', distanceMm);
  const out = direction(upRad, acrossRad);
  return {
    centre: scale(out, distanceMm),
    right: [Math.cos(acrossRad), 0, -Math.sin(acrossRad)],
    up: [
      -Math.sin(upRad) * Math.sin(acrossRad),
      Math.cos(upRad),
      -Math.sin(upRad) * Math.cos(acrossRad),
    ],
    normal: scale(out, -1),
  };
}

export const planeOf = (source: Source): Plane =>
  planeAt(source.distanceMm, source.upRad, source.acrossRad);

/** A round face is drawn with so many sides; of equal area, its edge is off by 0.02 % at most. */
const ROUND_SIDES = 128;

/** The outline in the face's own axes, mm, counter-clockwise; a round one with so many sides. */
function faceOutline(face: Face, roundSides = ROUND_SIDES): readonly (readonly [number, number])[] {
  if (face.shape === 'rectangle') {
    requirePositive('the width of the light', face.widthMm);
    requirePositive('the height of the light', face.heightMm);
    const [w, h] = [face.widthMm / 2, face.heightMm / 2];
    return [
      [-w, -h],
      [w, -h],
      [w, h],
      [-w, h],
    ];
  }
  requirePositive('the diameter of the light', face.diameterMm);
  const step = (2 * Math.PI) / roundSides;
  const radius = (face.diameterMm / 2) * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: roundSides }, (_, i) => [
    radius * Math.cos(i * step),
    radius * Math.sin(i * step),
  ]);
}

/** A point of a plane, given in the plane's own axes. */
export const onPlane = (plane: Plane, right: number, up: number): Vec =>
  add(plane.centre, add(scale(plane.right, right), scale(plane.up, up)));

/** The outline of the light's face in space. */
export function sourceOutline(source: Source, roundSides = ROUND_SIDES): readonly Vec[] {
  const plane = planeOf(source);
  return faceOutline(source.face, roundSides).map(([right, up]) => onPlane(plane, right, up));
}

/** Where a ray meets a plane's front, in the plane's own axes; null where it never does. */
export function meetPlane(
  plane: Plane,
  from: Vec,
  along: Vec,
): readonly [right: number, up: number] | null {
  const approach = dot(along, plane.normal);
  if (approach >= 0) return null;
  const reach = dot(sub(plane.centre, from), plane.normal) / approach;
  if (reach <= 0) return null;
  const hit = sub(add(from, scale(along, reach)), plane.centre);
  return [dot(hit, plane.right), dot(hit, plane.up)];
}

/**
 * How far a point of the face's plane lies inside the face, mm: to the nearest edge; negative
 * outside, to the edge's line.
 */
export function insideFaceMm(face: Face, [right, up]: readonly [number, number]): number {
  return face.shape === 'round'
    ? face.diameterMm / 2 - Math.hypot(right, up)
    : Math.min(face.widthMm / 2 - Math.abs(right), face.heightMm / 2 - Math.abs(up));
}
