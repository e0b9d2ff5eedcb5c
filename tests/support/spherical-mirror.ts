/**
 * A bubble's images on the axis by the mirror equation 1/s + 1/s′ = 2/r (Gaussian optics; e.g. Hecht,
 * Optics, ch. 5), to check those that are found by following rays. r radius, s from the object to the
 * front vertex, mm.
 */
export interface SphereImage {
  /** How far behind the bubble's front vertex the image lies, mm. */
  readonly behindVertexMm: number;
  /** Lateral magnification: positive upright, negative upside down. */
  readonly magnification: number;
}

/** Virtual, upright, r·s/(2s + r) behind the vertex. */
export function frontImage(r: number, s: number): SphereImage {
  const magnification = r / (2 * s + r);
  return { behindVertexMm: magnification * s, magnification };
}

/** Real, upside down, r·(s + 2r)/(2s + 3r) in front of the rear vertex. */
export function rearImage(r: number, s: number): SphereImage {
  const magnification = -r / (2 * s + 3 * r);
  return { behindVertexMm: 2 * r + magnification * (s + 2 * r), magnification };
}
