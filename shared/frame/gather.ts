/** A shot's scene, from its inputs and figures, and what of it the plan doesn't say. */

import type { Bench } from '../figures/bench.ts';
import { derive, type Figure, figureOf } from '../figures/figure.ts';
import { holderOf } from '../figures/holder.ts';
import { sourceOf } from '../figures/light-source.ts';
import { mirrorKind } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { natureOf } from '../figures/subject-kinds.ts';
import type { LinearColour } from '../film/screen.ts';
import { hiddenShare } from '../mirror/clearance.ts';
import type { Source } from '../mirror/source.ts';
import { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { balanceOf } from './balance.ts';
import { type Placed, placedOf, thicknessOf } from './camera.ts';
import { levelOfLuminance } from './level.ts';
import { lightsOf, withReason } from './lights.ts';
import type { Scene } from './scene.ts';

export interface Gathered {
  readonly scene: Scene;
  /** What the picture is and what is not in it, in whole sentences. */
  readonly caption: readonly string[];
}

const BLACK: LinearColour = [0, 0, 0];

/** Unknown where there is nothing to draw a frame of: no field, no subject, no distance. */
export function gather(bench: Bench, figures: ShotFigures): Figure<Gathered> {
  return derive([placedOf(bench, figures)], (placed): Gathered => {
    const balance = balanceOf(bench);
    const { shown, lit, missing } = lightsOf(bench, figures, placed, balance);
    const background = backgroundOf(bench, figures);
    const linesMm = mirrorKind(bench) === undefined ? linesOver(placed) : undefined;
    const scene: Scene = {
      ...placed,
      shown,
      lit,
      inTheWay: inTheWay(bench, placed),
      background: background.known ? background.value : BLACK,
      isClear: natureOf(bench.subject)?.isFilm === true,
      linesMm,
    };
    return {
      scene,
      caption: [
        message`Traced from the plan, not a photograph.`,
        ...missing,
        ...(background.known
          ? []
          : [withReason(message`The background is drawn black`, background)]),
        ...(scene.inTheWay.length > 0
          ? [message`A light between lens and subject hides part of the frame.`]
          : []),
        ...ofSubject(bench, scene),
        ...(scene.front
          ? [
              message`Stripes mark where the subject shows the lens; how bright that is, the plan doesn't say.`,
            ]
          : []),
        message`Everything that the plan doesn't place around the set is black.`,
      ],
    };
  });
}

/** The background's colour isn't known: it is drawn grey. */
function backgroundOf(bench: Bench, figures: ShotFigures): Figure<LinearColour> {
  const { fields, subject } = bench;
  const own = fields['background-luminance'];
  const luminance =
    own.state === 'missing' && subject
      ? figureOf(subject.fields['background-luminance'], subject.name)
      : figureOf(own, bench.shot);
  return derive([luminance, levelOfLuminance(bench, figures)], (cdPerM2, perUnit): LinearColour => {
    const level = cdPerM2 * perUnit;
    return [level, level, level];
  });
}

function inTheWay({ lights }: Bench, { camera, body }: Placed): readonly Source[] {
  if (!lights.known || body.shape !== 'flat') return [];
  const view = { ...camera, pupilDistanceMm: camera.pupilAtMm };
  return lights.value.flatMap((light) => {
    const source = sourceOf(light);
    return source.known && hiddenShare(view, source.value) > 0 ? [source.value] : [];
  });
}

/** About a dozen lines across the frame, at a distance that is easily counted: 1, 2 or 5 of a unit. */
function linesOver({ camera }: Placed): number {
  const most = camera.widthMm / 8;
  const power = 10 ** Math.floor(Math.log10(most));
  return power * ([5, 2].find((step) => step * power <= most) ?? 1);
}

const say = new Say(() => 'mm');

function ofSubject(bench: Bench, scene: Scene): readonly string[] {
  const { subject } = bench;
  if (!subject) return [];
  const { name } = subject;
  if (scene.linesMm !== undefined)
    return [
      message`${name} is drawn as a flat grey card, with lines every ${say.length(scene.linesMm)}.`,
    ];
  if (!natureOf(subject)?.isFilm) return [];
  const thickness = thicknessOf(bench);
  if (!thickness)
    return [
      withReason(message`The film has no colours here`, figureOf(subject.fields.thickness, name)),
    ];
  const held = holderOf(bench)
    ? [message`A line marks the edge of ${name}; its holder is not drawn.`]
    : [];
  if (thickness.from === thickness.to) return held;
  return [
    ...held,
    message`Its thickness runs evenly from ${thickness.from} nm at the top to ${thickness.to} nm at the bottom; a real film flows.`,
  ];
}
