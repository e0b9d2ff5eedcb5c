/** The lights of a shot as the subject shows them, or is lit by them. */

import type { Bench, LightInUse } from '../figures/bench.ts';
import { derive, type Figure, figureOf, known, reasonOf, unknownOf } from '../figures/figure.ts';
import { averageShare, indexOf, reflectanceByThickness } from '../figures/film-share.ts';
import { diffuseEv } from '../figures/light-reading.ts';
import { luminanceOf, sourceOf, weightOn } from '../figures/light-source.ts';
import { isGloss, mirrorKind } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { D65_K } from '../film/daylight.ts';
import type { LinearColour } from '../film/screen.ts';
import { planeOf, type Source, sourceOutline } from '../mirror/source.ts';
import { message } from '../words/message.ts';
import { type Balance, kelvinOf } from './balance.ts';
import { type Placed, thicknessOf } from './camera.ts';
import { FilmTable, FLATTEST_COS, meanReturns } from './film-table.ts';
import { levelBy, levelOfLuminance, MID_GREY } from './level.ts';
import type { LitBy, ShownLight } from './scene.ts';

/** Round lights are drawn with so many sides where they light a matt subject. */
const SIDES = 24;

/** Angles at which a film's colours are calculated: a flat one shows few, a bubble all. */
const FLAT_ANGLES = 3;
const BALL_ANGLES = 12;

interface Lights {
  readonly shown: readonly ShownLight[];
  readonly lit: readonly LitBy[];
  /** What isn't drawn, in whole sentences. */
  readonly missing: readonly string[];
}

export function lightsOf(
  bench: Bench,
  figures: ShotFigures,
  placed: Placed,
  balance: Balance,
): Lights {
  const missing: string[] = [];
  const lights = bench.lights.known ? bench.lights.value : [];
  if (lights.length === 0) missing.push(message`The shot has no light that can be drawn.`);
  const levels = lights.map((light) => levelBy(light, bench, figures));
  const isUnknown = lights.length > 0 && levels.every((level) => !level.known);
  if (isUnknown)
    missing.push(
      withReason(message`The exposure is unknown, so it is drawn as if it were right`, levels[0]!),
    );
  const shown: ShownLight[] = [];
  const lit: LitBy[] = [];
  lights.forEach((light, i) => {
    const level = isUnknown ? known(MID_GREY) : levels[i]!;
    if (!level.known) {
      missing.push(withReason(message`${light.name} is not drawn`, level));
      return;
    }
    const source = sourceOf(light);
    if (kelvinOf(light) === undefined)
      missing.push(
        message`${light.name} is drawn white, since its \`colour-temperature\` is not known.`,
      );
    const mirrors = mirrorKind(bench) !== undefined;
    if (mirrors && !source.known)
      missing.push(withReason(message`${light.name} is not drawn`, source));
    if (mirrors) {
      if (source.known)
        shown.push(shownBy(light, source.value, level.value, bench, placed, balance));
      return;
    }
    if (!source.known)
      missing.push(withReason(message`The light of ${light.name} is drawn even`, source));
    if (source.known && shinesOnBack(source.value, bench)) {
      missing.push(message`${light.name} shines on the back of the subject.`);
      return;
    }
    lit.push({
      name: light.name,
      colour: times(balance.whiteOf(light), level.value),
      outline: source.known ? sourceOutline(source.value, SIDES) : undefined,
    });
    if (isGloss(bench)) {
      const highlight = highlightOf(light, source, bench, figures, balance);
      if (highlight.known) shown.push(highlight.value);
      else
        missing.push(withReason(message`The reflection of ${light.name} is not drawn`, highlight));
    }
  });
  return { shown, lit, missing };
}

const shinesOnBack = (source: Source, { tiltRad, tiltAxis }: Bench): boolean =>
  weightOn(source, tiltRad.known ? tiltRad.value : 0, tiltAxis) === 0;

/** A sentence, with what is missing for it where that is known. */
export function withReason(what: string, figure: Figure<unknown>): string {
  const reason = figure.known ? null : reasonOf(figure);
  return reason === null ? message`${what}.` : message`${what}: ${reason}.`;
}

const times = ([r, g, b]: LinearColour, k: number): LinearColour => [r * k, g * k, b * k];

/** A light in a film, a bubble or a polished surface: `level` is where the subject's mean is. */
function shownBy(
  light: LightInUse,
  source: Source,
  level: number,
  bench: Bench,
  placed: Placed,
  balance: Balance,
): ShownLight {
  const it = { name: light.name, source, plane: planeOf(source) };
  if (mirrorKind(bench) === 'surface')
    return { ...it, returned: { kind: 'even', colour: times(balance.whiteOf(light), level) } };
  const index = indexOf(bench);
  const n = index.known ? index.value : undefined;
  const thickness = thicknessOf(bench);
  const tilt = bench.tiltRad.known ? bench.tiltRad.value : 0;
  const mean = thickness ? reflectanceByThickness(bench, light) : known(averageShare(n, tilt));
  const share = mean.known && typeof mean.value === 'number' ? mean.value : undefined;
  if (!thickness || share === undefined) {
    const white = times(balance.whiteOf(light), level / (share ?? 1));
    return { ...it, returned: { kind: 'film', table: meanReturns(n, white) } };
  }
  const [leastCos, mostCos] = cosinesOf(placed, tilt);
  const table = new FilmTable({
    lightK: kelvinOf(light) ?? D65_K,
    index: n,
    fromNm: thickness.from,
    toNm: thickness.to,
    leastCos,
    mostCos,
    angles: placed.body.shape === 'ball' ? BALL_ANGLES : FLAT_ANGLES,
    colourOf: (xyz) => balance.colourOf(xyz, level / share, light),
  });
  return { ...it, returned: { kind: 'film', table } };
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

/** A light in a glossy surface, over the surface's own colour. */
function highlightOf(
  light: LightInUse,
  source: Figure<Source>,
  bench: Bench,
  figures: ShotFigures,
  balance: Balance,
): Figure<ShownLight> {
  const { subject } = bench;
  if (!subject) return unknownOf([source]);
  return derive(
    [
      source,
      luminanceOf(light, bench, diffuseEv(light, bench)),
      levelOfLuminance(bench, figures),
      figureOf(subject.fields['refractive-index'], subject.name),
    ],
    (face, cdPerM2, perUnit, n): ShownLight => ({
      name: light.name,
      source: face,
      plane: planeOf(face),
      returned: {
        kind: 'clear',
        colour: times(balance.whiteOf(light), cdPerM2 * perUnit),
        index: n,
      },
    }),
  );
}
