/**
 * Reflectance of a film in air: both faces' reflections, summed to the end (Airy).
 *
 * Source: M. Born and E. Wolf, Principles of Optics, ch. 7.6 (the plate's sum) and 1.5 (Fresnel).
 * With ρ the reflectance of one face and δ = 4π·n·d·cos θ′/λ the phase between neighbours,
 * R = F·sin²(δ/2)/(1 + F·sin²(δ/2)), F = 4ρ/(1 − ρ)²: for each polarisation, then the mean of
 * both. No absorption; film thin against the light's coherence.
 */
import { requireWithin } from './range.ts';

/** A film's thickness beyond which the light's colours have long run together, nm. */
export const THICKEST_NM = 10_000;

const requireIndex = (index: number): void => requireWithin('the index n', index, 1, 4);
const requireIncidence = (rad: number): void =>
  requireWithin('the angle of incidence', rad, 0, (89 * Math.PI) / 180);

/** cos θ′: inside the film, by Snell's law. */
export function cosInside(index: number, incidenceRad: number): number {
  requireIndex(index);
  requireIncidence(incidenceRad);
  return Math.sqrt(1 - (Math.sin(incidenceRad) / index) ** 2);
}

/** Coefficients of finesse F of both polarisations. */
export interface Finesse {
  /** Perpendicular to the plane of incidence. */
  readonly s: number;
  /** In it. */
  readonly p: number;
}

/** F = 4ρ/(1 − ρ)² with Fresnel's ρ, from air into index n and out again. */
export function finesse(index: number, incidenceRad: number): Finesse {
  const outside = Math.cos(incidenceRad);
  const inside = cosInside(index, incidenceRad);
  const s = ((outside - index * inside) / (outside + index * inside)) ** 2;
  const p = ((index * outside - inside) / (index * outside + inside)) ** 2;
  return { s: (4 * s) / (1 - s) ** 2, p: (4 * p) / (1 - p) ** 2 };
}

/** Airy's sum for unpolarised light at a phase whose sin²(δ/2) is given. */
export function airy({ s, p }: Finesse, sinSquared: number): number {
  return ((s * sinSquared) / (1 + s * sinSquared) + (p * sinSquared) / (1 + p * sinSquared)) / 2;
}

/**
 * Reflectance of a film in air for unpolarised light, 0 to 1.
 *
 * @param thicknessNm d, nm, 0 to 10 000
 * @param wavelengthNm λ, nm
 * @param index n at that wavelength, 1 to 4
 * @param incidenceRad θ, rad, from square on (0) to 89°; the film's tilt for light along the axis
 * @throws RangeError outside these
 */
export function filmReflectance(
  thicknessNm: number,
  wavelengthNm: number,
  index: number,
  incidenceRad = 0,
): number {
  requireWithin('the thickness in nm', thicknessNm, 0, THICKEST_NM);
  requireWithin('the wavelength in nm', wavelengthNm, 100, 100_000);
  const half = (2 * Math.PI * index * thicknessNm * cosInside(index, incidenceRad)) / wavelengthNm;
  return airy(finesse(index, incidenceRad), Math.sin(half) ** 2);
}

/** The most that a film returns, whatever its thickness; square on ((n² − 1)/(n² + 1))². */
export const peakReflectance = (index: number, incidenceRad = 0): number =>
  airy(finesse(index, incidenceRad), 1);

/**
 * What a film returns on average over thickness (or over wavelength, once it is thick):
 * 1 − 1/√(1 + F), the mean of Airy's sum over the phase; about half its peak.
 */
export function averageReflectance(index: number, incidenceRad = 0): number {
  const { s, p } = finesse(index, incidenceRad);
  return 1 - (1 / Math.sqrt(1 + s) + 1 / Math.sqrt(1 + p)) / 2;
}
