/** A lens surface by surface, traced paraxially: it knows nothing of principal planes or pupils. */

/** From the subject toward the sensor. */
export interface Prescription {
  readonly name: string;
  /** Radius, distance to the next surface, index behind it; Infinity is a plane. */
  readonly surfaces: readonly (readonly [radius: number, distance: number, index: number])[];
  /** The surface that the iris stands at, from 0; its own refraction stands behind the iris. */
  readonly iris: number;
}

interface Ray {
  readonly height: number;
  readonly slope: number;
}

/** Refraction at a sphere: n′u′ = n·u − y·(n′ − n)/R. */
const refracted = (
  { height, slope }: Ray,
  radius: number,
  before: number,
  behind: number,
): Ray => ({
  height,
  slope: (before * slope - (height * (behind - before)) / radius) / behind,
});

const carried = ({ height, slope }: Ray, distance: number): Ray => ({
  height: height + slope * distance,
  slope,
});

/** Through surfaces `from` up to but not with `to`, each with the distance behind it. */
function through({ surfaces }: Prescription, ray: Ray, from: number, to: number): Ray {
  let now = ray;
  for (let at = from; at < to; at++) {
    const [radius, distance, index] = surfaces[at]!;
    const before = surfaces[at - 1]?.[2] ?? 1;
    now = refracted(now, radius, before, index);
    if (at < surfaces.length - 1) now = carried(now, distance);
  }
  return now;
}

export const scaled = (lens: Prescription, by: number): Prescription => ({
  ...lens,
  surfaces: lens.surfaces.map(([radius, distance, index]) => [radius * by, distance * by, index]),
});

/** First surface to last. */
export const lengthOf = ({ surfaces }: Prescription): number =>
  surfaces.slice(0, -1).reduce((sum, [, distance]) => sum + distance, 0);

/** Focal length, and last surface to the focus, from a ray that comes in parallel. */
export function focalOf(lens: Prescription): { readonly focalMm: number; readonly backMm: number } {
  const { height, slope } = through(lens, { height: 1, slope: 0 }, 0, lens.surfaces.length);
  return { focalMm: -1 / slope, backMm: -height / slope };
}

/** The same lens with two of its surfaces farther apart: one of its groups has moved. */
export const parted = (lens: Prescription, behind: number, byMm: number): Prescription => ({
  ...lens,
  surfaces: lens.surfaces.map(([radius, distance, index], at) => [
    radius,
    at === behind ? distance + byMm : distance,
    index,
  ]),
});

/**
 * What a lens does that stands so far before the sensor, last surface to sensor, mm.
 *
 * @param marked the lens as its f-numbers are marked: at infinity, with the same iris
 */
export function tracedAt(lens: Prescription, toSensorMm: number, marked = lens) {
  const count = lens.surfaces.length;
  // From a subject x ahead, height after the lens at the sensor is a + b·x times the slope: 0 for the image.
  const parallel = carried(through(lens, { height: 1, slope: 0 }, 0, count), toSensorMm);
  const oblique = carried(through(lens, { height: 0, slope: 1 }, 0, count), toSensorMm);
  const workingMm = -oblique.height / parallel.height;
  const magnification = -parallel.height;
  // The iris's image through what is behind it: where a ray from its middle meets the axis again.
  const [height, slope] = [0, 1];
  const behindIris = through(lens, { height, slope }, lens.iris, count);
  const exitMm = -behindIris.height / behindIris.slope;
  const edge = through(lens, { height: 1, slope: 0 }, lens.iris, count);
  const exitRadius = edge.height + exitMm * edge.slope;
  // A parallel ray of height 1 crosses the iris this high: the entrance pupil for an iris of that size.
  const atIris = through(lens, { height: 1, slope: 0 }, 0, lens.iris).height;
  // The iris is as large as makes the marked f-number of the lens at infinity.
  const irisMm = through(marked, { height: 1, slope: 0 }, 0, marked.iris).height;
  const { focalMm } = focalOf(marked);
  const lightRatio = (toSensorMm - exitMm) / (Math.abs(exitRadius * irisMm) * focalMm);
  return {
    magnification: Math.abs(magnification),
    workingMm,
    fromSensorMm: workingMm + lengthOf(lens) + toSensorMm,
    pupilRatio: Math.abs(exitRadius * atIris),
    /** 2·log2(N_eff/N): the cone at the sensor against one as wide as the entrance pupil, f away. */
    lightStops: 2 * Math.log2(Math.abs(lightRatio)),
  };
}
