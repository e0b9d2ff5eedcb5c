/**
 * What a polarising filter does to the reflection of a clear surface or thin film in air.
 * Angles in rad from the surface's normal, 0 to π/2; n refractive index, > 1.
 */

/** Fresnel reflectance of one surface for light polarised across (s) and along (p) the plane of incidence. */
interface Reflectances {
  readonly s: number;
  readonly p: number;
}

/**
 * Fresnel's equations for one surface between air and index n. Source: A. Fresnel, 1823; E. Hecht,
 * Optics, "The Fresnel equations".
 */
export function surfaceReflectances(index: number, incidenceRad: number): Reflectances {
  const inside = Math.asin(Math.sin(incidenceRad) / index);
  const cosOut = Math.cos(incidenceRad);
  const cosIn = Math.cos(inside);
  return {
    s: ((cosOut - index * cosIn) / (cosOut + index * cosIn)) ** 2,
    p: ((index * cosOut - cosIn) / (index * cosOut + cosIn)) ** 2,
  };
}

/**
 * Degree of polarisation of the reflection of unpolarised light, (R_s − R_p)/(R_s + R_p): 0 facing the
 * surface, 1 at Brewster's angle. Of a thin film too, in the mean over its thickness as long as its
 * surfaces reflect little: both have the same angle. Source: Fresnel's equations.
 */
export function polarisationOfReflection(index: number, incidenceRad: number): number {
  const { s, p } = surfaceReflectances(index, incidenceRad);
  return (s - p) / (s + p);
}

/**
 * What the best setting of an ideal polariser can take off a reflection, and what it takes off unpolarised
 * light, both in stops. The reflection loses between 1 stop, where it is not polarised and the filter only
 * costs light, and Infinity, where it is wholly polarised: there it takes the film's colours away.
 * Degree of polarisation 0 to 1. Source: E.-L. Malus, 1809.
 */
export function polariserStops(polarisation: number): {
  readonly reflectionMost: number;
  readonly reflectionLeast: number;
  readonly unpolarised: number;
} {
  return {
    reflectionMost: 0 - Math.log2((1 - polarisation) / 2),
    reflectionLeast: 0 - Math.log2((1 + polarisation) / 2),
    unpolarised: 1,
  };
}
