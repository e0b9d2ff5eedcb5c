/** From spectra to XYZ: the sum over wavelength, for a perfect white and for a film. */
import { colourMatching, type Tristimulus } from './colour-matching.ts';
import { lightSpectrum } from './light.ts';
import { requireWithin } from './range.ts';
import { airy, cosInside, type Finesse, finesse, THICKEST_NM } from './reflectance.ts';
import { waterIndex } from './water.ts';

export interface FilmView {
  /** Colour temperature of the light that the film shows, K. */
  readonly lightK: number;
  /** Angle of incidence, rad: the film's tilt. */
  readonly incidenceRad: number;
  /** n, the same at all wavelengths; left out: water's, with its dispersion. */
  readonly index?: number;
  /** n of the liquid that it lies on, or water's with its dispersion; left out: it hangs in air. */
  readonly under?: number | 'water';
}

/** All of a view that doesn't change with thickness, so that a sequence costs one sine a step. */
export interface PreparedFilm {
  readonly view: FilmView;
  readonly bands: readonly {
    /** Half the phase per nm of thickness, rad/nm. */
    readonly halfPhase: number;
    readonly finesse: Finesse;
    /** Light times matching functions, scaled so that ΣY is 100. */
    readonly weight: Tristimulus;
  }[];
  /** The light itself, thrown back by a perfect white: Y is 100. */
  readonly white: Tristimulus;
}

/** Fine enough for films of 10 µm, whose bands are 11 nm apart at 550 nm. */
const STEP_NM = 2;
const WAVELENGTHS: readonly number[] = Array.from(
  { length: (780 - 380) / STEP_NM + 1 },
  (_, i) => 380 + i * STEP_NM,
);

const scaled = (k: number, { x, y, z }: Tristimulus): Tristimulus => ({
  x: k * x,
  y: k * y,
  z: k * z,
});

const summed = (parts: readonly Tristimulus[]): Tristimulus => {
  let [x, y, z] = [0, 0, 0];
  for (const part of parts) {
    x += part.x;
    y += part.y;
    z += part.z;
  }
  return { x, y, z };
};

/** Colour temperatures kept: a plan has a few lights, and each is used by many shots. */
const MOST_KEPT = 16;
const keptWeights = new Map<number, readonly Tristimulus[]>();

/** Light times matching functions at every wavelength, scaled so that ΣY is 100; kept by the light. */
function weights(lightK: number): readonly Tristimulus[] {
  const kept = keptWeights.get(lightK);
  if (kept) return kept;
  const made = weighed(lightK);
  if (keptWeights.size >= MOST_KEPT) keptWeights.clear();
  keptWeights.set(lightK, made);
  return made;
}

function weighed(lightK: number): readonly Tristimulus[] {
  const light = lightSpectrum(lightK);
  const raw = WAVELENGTHS.map((nm) => scaled(light(nm), colourMatching(nm)));
  const { y } = summed(raw);
  return raw.map((each) => scaled(100 / y, each));
}

/** Every wavelength with its share of X, Y and Z of the light itself; the Y sum up to 100. */
export function weightedSpectrum(
  lightK: number,
): readonly { readonly nm: number; readonly weight: Tristimulus }[] {
  const each = weights(lightK);
  return WAVELENGTHS.map((nm, at) => ({ nm, weight: each[at] as Tristimulus }));
}

/** XYZ of a perfect white under a light of this colour temperature, Y 100. */
export const whiteOf = (lightK: number): Tristimulus => summed(weights(lightK));

/**
 * Prepares a view for any number of thicknesses.
 *
 * @throws RangeError where light, angle or index are outside their formulas' ranges
 */
export function prepareFilm(view: FilmView): PreparedFilm {
  const each = weights(view.lightK);
  const bands = WAVELENGTHS.map((nm, i) => {
    const index = view.index ?? waterIndex(nm);
    return {
      halfPhase: (2 * Math.PI * index * cosInside(index, view.incidenceRad)) / nm,
      finesse: finesse(
        index,
        view.incidenceRad,
        view.under === 'water' ? waterIndex(nm) : view.under,
      ),
      weight: each[i] as Tristimulus,
    };
  });
  return { view, bands, white: summed(each) };
}

/**
 * XYZ of the film, absolute: a perfect white is Y 100, a film in air 7.7 at most.
 *
 * @param thicknessNm d, 0 to 10 000 nm
 * @throws RangeError outside
 */
export function filmTristimulus(film: PreparedFilm, thicknessNm: number): Tristimulus {
  requireWithin('the thickness in nm', thicknessNm, 0, THICKEST_NM);
  let [x, y, z] = [0, 0, 0];
  for (const band of film.bands) {
    const reflectance = airy(band.finesse, Math.sin(band.halfPhase * thicknessNm) ** 2);
    x += reflectance * band.weight.x;
    y += reflectance * band.weight.y;
    z += reflectance * band.weight.z;
  }
  return { x, y, z };
}
