/**
 * Whether light, stand and lens stand in one another: least distances between a light's face and
 * round bodies (lens, column of a stand), and what a light in the way hides of the frame.
 */
import { apartMm, type Cylinder } from './apart.ts';
import { checkedFrame, type FrameView } from './patch.ts';
import { cut, cutToRectangle, moments, type Point2 } from './polygon.ts';
import { requirePositive } from './range.ts';
import { minimum } from './solve.ts';
import { onPlane, planeOf, type Source, sourceOutline } from './source.ts';
import { between, dot, norm, scale, sub, type Vec } from './vector.ts';

/** The rig on the axis, from its front rim backwards. */
export const lensCylinder = (
  workingDistanceMm: number,
  lengthMm: number,
  diameterMm: number,
): Cylinder => ({
  from: [0, 0, workingDistanceMm],
  to: [0, 0, workingDistanceMm + lengthMm],
  diameterMm,
});

/** Distance from a point to a cylinder's surface, mm; negative inside. Exact, and convex. */
export function distanceToCylinderMm(point: Vec, cylinder: Cylinder): number {
  requirePositive('the diameter', cylinder.diameterMm);
  const axis = sub(cylinder.to, cylinder.from);
  const length = norm(axis);
  requirePositive('the length', length);
  const fromEnd = sub(point, cylinder.from);
  const along = dot(fromEnd, axis) / length;
  const aside = norm(sub(fromEnd, scale(axis, along / length))) - cylinder.diameterMm / 2;
  const beyond = Math.abs(along - length / 2) - length / 2;
  if (aside <= 0 || beyond <= 0) return Math.max(aside, beyond);
  return Math.hypot(aside, beyond);
}

/** Least distance between a light's face and a cylinder, mm; 0 or less where they meet. */
export const faceClearanceMm = (source: Source, cylinder: Cylinder): number =>
  apartMm(source, cylinder) ?? searchedClearanceMm(source, cylinder);

/** The same by a search over the whole face, which tells how deep they stand in one another too. */
export function searchedClearanceMm(source: Source, cylinder: Cylinder): number {
  const plane = planeOf(source);
  const face = source.face;
  const halfUp = (face.shape === 'round' ? face.diameterMm : face.heightMm) / 2;
  const halfRightAt = (up: number): number =>
    face.shape === 'round' ? Math.sqrt(Math.max(0, halfUp ** 2 - up ** 2)) : face.widthMm / 2;
  // The distance is convex over the face, so least along one axis of the least along the other.
  const least = (up: number): number => {
    const half = halfRightAt(up);
    return minimum((r) => distanceToCylinderMm(onPlane(plane, r, up), cylinder), -half, half).value;
  };
  return minimum(least, -halfUp, halfUp).value;
}

/**
 * Whether a polygon lies wholly on the far side of one side of the view, whose planes run through the
 * pupil's middle: it hides nothing then, which is said of most lights with less work. The margin
 * keeps rounding on the side of looking closer.
 */
function isBeside({ widthMm, heightMm, pupilDistanceMm: u }: FrameView, polygon: readonly Vec[]) {
  const margin = 1 + 1e-9;
  const isPast = (axis: 0 | 1, half: number): boolean =>
    polygon.every((p) => Math.abs(p[axis]) * u > half * Math.abs(u - p[2]) * margin) &&
    polygon.every((p) => p[axis] > 0 === (polygon[0] as Vec)[axis] > 0);
  return isPast(0, widthMm / 2) || isPast(1, heightMm / 2);
}

/**
 * Share of the frame, 0 to 1, that a light hides by standing between subject and lens, seen from
 * the pupil's middle.
 */
export function hiddenShare(view: FrameView, source: Source): number {
  checkedFrame(view);
  const u = view.pupilDistanceMm;
  const outline = sourceOutline(source);
  if (isBeside(view, outline)) return 0;
  const inWay = cut(
    cut(outline, (p) => p[2], between),
    (p) => u * 0.999 - p[2],
    between,
  );
  const shadow = inWay.map((p): Point2 => {
    const t = u / (u - p[2]);
    return [p[0] * t, p[1] * t];
  });
  const { area } = moments(cutToRectangle(shadow, view.widthMm / 2, view.heightMm / 2));
  return area / (view.widthMm * view.heightMm);
}
