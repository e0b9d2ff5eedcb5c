/**
 * Reflectance of a film in air or on a liquid: both faces' reflections, summed to the end (Airy).
 *
 * Source: M. Born and E. Wolf, Principles of Optics, ch. 7.6 (the plate's sum) and 1.5 (Fresnel).
 * With ρ the reflectance of one face and δ = 4π·n·d·cos θ′/λ the phase between neighbours,
 * R = F·sin²(δ/2)/(1 + F·sin²(δ/2)), F = 4ρ/(1 − ρ)²: for each polarisation, then the mean of
 * both. No absorption; film thin against the light's coherence.
 *
 * On a liquid the faces differ: with their amplitudes r₁ and r₂, R = (R₀ + G·sin²(δ/2)) /
 * (1 + G·sin²(δ/2)), G = −4·r₁r₂/(1 + r₁r₂)², R₀ = ((r₁ + r₂)/(1 + r₁r₂))², what the liquid
 * returns without a film. In air r₂ = −r₁, R₀ = 0 and G = F. Born and Wolf, ch. 1.6, eq. 58.
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

/** Coefficients of finesse F (on a liquid G) of both polarisations. */
export interface Finesse {
  /** Perpendicular to the plane of incidence. */
  readonly s: number;
  /** In it. */
  readonly p: number;
  /** R₀ of both, what is returned without a film: 0 in air. */
  readonly bare: { readonly s: number; readonly p: number };
}

const IN_AIR = { s: 0, p: 0 };

/**
 * F = 4ρ/(1 − ρ)² with Fresnel's ρ, from air into index n and out again, or into what it lies on.
 *
 * @param under index of the liquid that the film lies on, 1 to 4; left out: it hangs in air
 */
export function finesse(index: number, incidenceRad: number, under?: number): Finesse {
  const outside = Math.cos(incidenceRad);
  const inside = cosInside(index, incidenceRad);
  if (under !== undefined) {
    const below = cosInside(under, incidenceRad);
    const s = onLiquid(
      (outside - index * inside) / (outside + index * inside),
      (index * inside - under * below) / (index * inside + under * below),
    );
    const p = onLiquid(
      (index * outside - inside) / (index * outside + inside),
      (under * inside - index * below) / (under * inside + index * below),
    );
    return { s: s.finesse, p: p.finesse, bare: { s: s.bare, p: p.bare } };
  }
  const s = ((outside - index * inside) / (outside + index * inside)) ** 2;
  const p = ((index * outside - inside) / (index * outside + inside)) ** 2;
  return { s: (4 * s) / (1 - s) ** 2, p: (4 * p) / (1 - p) ** 2, bare: IN_AIR };
}

/** G and R₀ by the amplitudes of the upper and the lower face. */
const onLiquid = (upper: number, lower: number) => ({
  finesse: (-4 * upper * lower) / (1 + upper * lower) ** 2,
  bare: ((upper + lower) / (1 + upper * lower)) ** 2,
});

/** (R₀ + g)/(1 + g), `varying` being g/(1 + g) or its mean: what a film adds to its liquid. */
export const withBare = (bare: number, varying: number): number => bare + (1 - bare) * varying;

/** Airy's sum for unpolarised light at a phase whose sin²(δ/2) is given. */
export function airy({ s, p, bare }: Finesse, sinSquared: number): number {
  return (
    (withBare(bare.s, (s * sinSquared) / (1 + s * sinSquared)) +
      withBare(bare.p, (p * sinSquared) / (1 + p * sinSquared))) /
    2
  );
}

/**
 * Reflectance of a film in air or on a liquid, for unpolarised light, 0 to 1.
 *
 * @param thicknessNm d, nm, 0 to 10 000
 * @param wavelengthNm λ, nm
 * @param index n at that wavelength, 1 to 4
 * @param incidenceRad θ, rad, from square on (0) to 89°; the film's tilt for light along the axis
 * @param under index of the liquid that it lies on; left out: air
 * @throws RangeError outside these
 */
export function filmReflectance(
  thicknessNm: number,
  wavelengthNm: number,
  index: number,
  incidenceRad = 0,
  under?: number,
): number {
  requireWithin('the thickness in nm', thicknessNm, 0, THICKEST_NM);
  requireWithin('the wavelength in nm', wavelengthNm, 100, 100_000);
  const half = (2 * Math.PI * index * thicknessNm * cosInside(index, incidenceRad)) / wavelengthNm;
  return airy(finesse(index, incidenceRad, under), Math.sin(half) ** 2);
}

/** The most that a film returns, whatever its thickness; square on ((n² − 1)/(n² + 1))². */
export const peakReflectance = (index: number, incidenceRad = 0): number =>
  airy(finesse(index, incidenceRad), 1);

/** Least and most that a film on a liquid returns at one wavelength, whatever its thickness. */
export function reflectanceEnds(
  index: number,
  incidenceRad: number,
  under: number,
): readonly [least: number, most: number] {
  const film = finesse(index, incidenceRad, under);
  const ends = [airy(film, 0), airy(film, 1)] as const;
  return [Math.min(...ends), Math.max(...ends)];
}

/**
 * What a film returns on average over thickness (or over wavelength, once it is thick):
 * 1 − 1/√(1 + F), the mean of Airy's sum over the phase; about half its peak.
 */
export function averageReflectance(index: number, incidenceRad = 0, under?: number): number {
  const { s, p, bare } = finesse(index, incidenceRad, under);
  if (under !== undefined)
    return (
      (withBare(bare.s, 1 - 1 / Math.sqrt(1 + s)) + withBare(bare.p, 1 - 1 / Math.sqrt(1 + p))) / 2
    );
  return 1 - (1 / Math.sqrt(1 + s) + 1 / Math.sqrt(1 + p)) / 2;
}
