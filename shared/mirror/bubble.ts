/**
 * A bubble as two mirrors: convex in front, concave behind. On the axis, with the mirror equation
 * 1/s + 1/s′ = 2/r (Gaussian optics; e.g. Hecht, Optics, ch. 5): where the images lie, how large.
 * The wall is too thin to bend light, so the front lets the rear's image through unmoved.
 */
import { requirePositive } from './range.ts';

interface SphereImage {
  /** How far behind the bubble's front vertex the image lies, mm. */
  readonly behindVertexMm: number;
  /** Lateral magnification: positive upright, negative upside down. */
  readonly magnification: number;
}

function checked(radiusMm: number, distanceMm: number): void {
  requirePositive('the radius of the bubble r', radiusMm);
  requirePositive('the distance to the bubble s', distanceMm);
}

/**
 * Image in the front: virtual, upright, r·s/(2s + r) behind the vertex, magnified r/(2s + r).
 *
 * @param radiusMm r, mm
 * @param distanceMm s, from the object to the front vertex, mm
 */
export function frontImage(radiusMm: number, distanceMm: number): SphereImage {
  checked(radiusMm, distanceMm);
  const magnification = radiusMm / (2 * distanceMm + radiusMm);
  return { behindVertexMm: magnification * distanceMm, magnification };
}

/**
 * Image in the rear: real, upside down, r·(s + 2r)/(2s + 3r) in front of the rear vertex,
 * magnified −r/(2s + 3r).
 *
 * @param radiusMm r, mm
 * @param distanceMm s, from the object to the front vertex, mm
 */
export function rearImage(radiusMm: number, distanceMm: number): SphereImage {
  checked(radiusMm, distanceMm);
  const magnification = -radiusMm / (2 * distanceMm + 3 * radiusMm);
  const beforeRear = -magnification * (distanceMm + 2 * radiusMm);
  return { behindVertexMm: 2 * radiusMm - beforeRear, magnification };
}
