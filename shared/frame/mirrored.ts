/** A light as a subject shows it that is a mirror, or partly one. */

import type { Bench, LightInUse } from '../figures/bench.ts';
import { derive, type Figure, known, unknownOf } from '../figures/figure.ts';
import {
  averageShare,
  indexOf,
  layerOf,
  reflectanceByThickness,
  unknownThickness,
  viewOf,
} from '../figures/film-share.ts';
import { imageStops } from '../figures/highlight.ts';
import { errorBy } from '../figures/light.ts';
import { mirrorKind, reflectanceOf } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { natureOf } from '../figures/subject-kinds.ts';
import { D65_K } from '../film/daylight.ts';
import type { LinearColour } from '../film/screen.ts';
import { planeOf, type Source } from '../mirror/source.ts';
import { type Balance, kelvinOf } from './balance.ts';
import { type Placed, thicknessOf } from './camera.ts';
import { FilmTable, FLATTEST_COS, meanReturns } from './film-table.ts';
import { isoOf, MID_GREY } from './level.ts';
import type { ShownLight } from './scene.ts';

/** Angles at which a film's colours are calculated: a flat one shows few, a bubble all. */
const FLAT_ANGLES = 3;
const BALL_ANGLES = 12;

export const times = ([r, g, b]: LinearColour, k: number): LinearColour => [r * k, g * k, b * k];

/** What the subject's mean is of a light: where it lies, and R. */
interface Mean {
  readonly level: number;
  readonly share: number | undefined;
}

/** A light in a film, a bubble, a liquid or a polished surface: `level` is where the subject's mean is. */
export function shownBy(
  light: LightInUse,
  source: Source,
  level: number,
  bench: Bench,
  placed: Placed,
  balance: Balance,
): ShownLight {
  const it = { name: light.name, source, plane: planeOf(source) };
  const layer = layerOf(bench);
  const white = balance.whiteOf(light);
  if (layer) {
    const film = viewOf(layer, known(kelvinOf(light) ?? D65_K), known(0));
    if (film.known) {
      const thickness = thicknessOf(bench);
      const share = filmShare(bench, light, thickness !== undefined);
      const { index, under } = film.value;
      if (!thickness || share === undefined) {
        const face = times(white, level / (share ?? 1));
        return { ...it, returned: { kind: 'film', table: meanReturns(index, under, face) } };
      }
      const of = { index, under, level, share, thickness };
      return {
        ...it,
        returned: { kind: 'film', table: tableOf(light, of, bench, placed, balance) },
      };
    }
  }
  const mean = reflectanceOf(bench, light);
  return {
    ...it,
    returned: plainly(bench, white, { level, share: mean.known ? mean.value : undefined }),
  };
}

function tableOf(
  light: LightInUse,
  of: Mean & {
    readonly share: number;
    readonly index: number | undefined;
    readonly under: number | 'water' | undefined;
    readonly thickness: { readonly from: number; readonly to: number };
  },
  bench: Bench,
  placed: Placed,
  balance: Balance,
): FilmTable {
  const [leastCos, mostCos] = cosinesOf(placed, bench.tiltRad.known ? bench.tiltRad.value : 0);
  return new FilmTable({
    lightK: kelvinOf(light) ?? D65_K,
    index: of.index,
    under: of.under,
    fromNm: of.thickness.from,
    toNm: of.thickness.to,
    leastCos,
    mostCos,
    angles: placed.body.shape === 'ball' ? BALL_ANGLES : FLAT_ANGLES,
    colourOf: (xyz) => balance.colourOf(xyz, of.level / of.share, light),
  });
}

/** R of a film on average: over its thickness, or over all where that isn't given. */
function filmShare(bench: Bench, light: LightInUse, isGiven: boolean): number | undefined {
  if (isGiven) {
    const mean = reflectanceByThickness(bench, light);
    return mean.known ? mean.value : undefined;
  }
  const layer = layerOf(bench);
  if (natureOf(bench.subject)?.isFilm !== true && layer) {
    const mean = unknownThickness(layer, bench.tiltRad);
    return mean.known ? mean.value.middle : undefined;
  }
  const index = indexOf(bench);
  const tilt = bench.tiltRad.known ? bench.tiltRad.value : 0;
  const mean = averageShare(index.known ? index.value : undefined, tilt);
  return typeof mean === 'number' ? mean : undefined;
}

/** One face: of a clear liquid by Fresnel's law, else with the share that the plan gives. */
function plainly(
  bench: Bench,
  white: LinearColour,
  { level, share }: Mean,
): ShownLight['returned'] {
  const given = bench.subject?.fields.reflectance.state !== 'missing';
  const index = indexOf(bench);
  if (mirrorKind(bench) === 'surface' && !given && share && index.known && index.value)
    return { kind: 'clear', colour: times(white, level / share), index: index.value };
  return { kind: 'even', colour: times(white, level), share: share ?? 0 };
}

/** Cosines of the angles that the frame's rays make with the subject: all of a ball's. */
function cosinesOf({ camera, body }: Placed, tiltRad: number): readonly [number, number] {
  if (body.shape === 'ball') return [FLATTEST_COS, 1];
  const { widthMm, heightMm, pupilMm, pupilAtMm } = camera;
  const reach = Math.hypot(widthMm, heightMm) / 2 + pupilMm / 2;
  const bowed = Math.asin(Math.min(1, Math.abs(body.surface.curvaturePerMm) * reach));
  const spread = Math.atan2(reach, pupilAtMm) + bowed;
  const most = Math.min(Math.acos(FLATTEST_COS), Math.abs(tiltRad) + spread);
  const least = Math.max(0, Math.abs(tiltRad) - spread);
  return [Math.cos(most), Math.cos(least)];
}

/**
 * A light in a glossy surface, over the surface's own colour: seen square on it lies as far over
 * mid-grey as the figures say.
 */
export function highlightOf(
  light: LightInUse,
  source: Figure<Source>,
  bench: Bench,
  figures: ShotFigures,
  balance: Balance,
): Figure<ShownLight> {
  const { subject } = bench;
  if (!subject) return unknownOf([source]);
  const stops = imageStops(
    light,
    bench,
    errorBy(light, bench, figures, figures.shutterSeconds),
    isoOf(bench, figures),
  );
  const { reflectance } = subject.fields;
  const index = reflectance.state === 'missing' ? indexOf(bench) : known(undefined);
  return derive(
    [source, stops, reflectanceOf(bench, light), index],
    (face, over, share, n): ShownLight => {
      const colour = times(balance.whiteOf(light), MID_GREY * 2 ** over);
      return {
        name: light.name,
        source: face,
        plane: planeOf(face),
        returned:
          n === undefined
            ? { kind: 'even', colour, share }
            : { kind: 'clear', colour: times(colour, 1 / share), index: n },
      };
    },
  );
}
