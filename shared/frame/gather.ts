/** A shot's scene, from its inputs and figures, and what of it the plan doesn't say. */

import { highlightLatitudeOf } from '../figures/assumed.ts';
import type { Bench } from '../figures/bench.ts';
import { derive, type Figure, figureOf } from '../figures/figure.ts';
import { layerOf } from '../figures/film-share.ts';
import { latitudeOf, placeOfImage } from '../figures/highlight.ts';
import { sourceOf } from '../figures/light-source.ts';
import { isGloss, mirrorKind } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { natureOf } from '../figures/subject-kinds.ts';
import { isClear, shinesThrough } from '../figures/through.ts';
import type { LinearColour } from '../film/screen.ts';
import { hiddenShare } from '../mirror/clearance.ts';
import type { Source } from '../mirror/source.ts';
import { ifKnown } from '../plan/field.ts';
import { saidInFrame } from '../say/in-frame.ts';
import { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import { balanceOf } from './balance.ts';
import { type Placed, placedOf, thicknessOf } from './camera.ts';
import { clipsAt, levelOfLuminance } from './level.ts';
import { lightsOf, withReason } from './lights.ts';
import type { Scene } from './scene.ts';

export interface Gathered {
  readonly scene: Scene;
  /** Linear light from which the body records no more: white. */
  readonly clipAt: number;
  /** What there is to say of the picture, in whole sentences. */
  readonly notes: readonly Note[];
}

/** A sentence, and what has to be seen in the picture for it to matter; left out: it always does. */
export interface Note {
  readonly text: string;
  readonly of?: 'lens' | 'hidden' | 'mark' | 'beside' | 'dark' | 'clipped';
}

/** A light behind that fills more of the frame leaves nothing of the background to see. */
const FILLED = 0.98;

const BLACK: LinearColour = [0, 0, 0];

/** Unknown where there is nothing to draw a frame of: no field, no subject, no distance. */
export function gather(bench: Bench, figures: ShotFigures): Figure<Gathered> {
  return derive([placedOf(bench, figures)], (placed): Gathered => {
    const balance = balanceOf(bench);
    const { shown, lit, behind, missing } = lightsOf(bench, figures, placed, balance);
    const background = backgroundOf(bench, figures);
    const isFilled = figures.backlight.known && figures.backlight.value.share > FILLED;
    const isCard = mirrorKind(bench) === undefined && behind.length === 0;
    const latitude = latitudeOf(bench);
    const clipAt = clipsAt(latitude.known ? latitude.value : highlightLatitudeOf().prior.middle);
    const scene: Scene = {
      ...placed,
      shown,
      lit,
      behind,
      inTheWay: inTheWay(bench, placed),
      background: background.known ? background.value : BLACK,
      clearShare: clearShareOf(bench),
      linesMm: isCard ? linesOver(placed) : undefined,
    };
    return {
      scene,
      clipAt,
      notes: [
        { text: message`Traced from the plan, not a photograph.` },
        ...missing.map((text) => ({ text })),
        ...(background.known || isFilled
          ? []
          : [
              {
                text: withReason(message`The background is drawn black`, background),
                ...(scene.clearShare === 0 && { of: 'beside' as const }),
              },
            ]),
        { text: message`A light between lens and subject hides part of the frame.`, of: 'hidden' },
        ...ofSubject(bench, scene),
        ...ofHighlight(bench, figures),
        ...ofWhite(bench, latitude),
        {
          text: message`Stripes mark the lens's reflection; the plan doesn't say how bright it is.`,
          of: 'lens',
        },
        { text: message`Where the subject shows no light of the plan, it is black.`, of: 'dark' },
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

/** What of the background comes through the subject. */
function clearShareOf(bench: Bench): number {
  const { subject } = bench;
  if (mirrorKind(bench) !== undefined) return natureOf(subject)?.isClear === true ? 1 : 0;
  if (!subject || !isClear(bench)) return 0;
  return ifKnown(subject.fields.transmittance) ?? 1;
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

function ofSubject(bench: Bench, scene: Scene): readonly Note[] {
  const { subject } = bench;
  if (!subject) return [];
  const { name } = subject;
  if (scene.linesMm !== undefined) {
    const every = say.length(scene.linesMm);
    return [{ text: message`${name} is drawn as a flat grey card, with lines every ${every}.` }];
  }
  const edge: Note = {
    text: message`A line marks the edge of ${name}; no holder is drawn.`,
    of: 'mark',
  };
  if (scene.behind.length > 0) {
    const across = ifKnown(subject.fields.thickness);
    return [
      { text: message`${name} is drawn as a flat clear plate.` },
      ...(across && across.from < across.to && scene.behind.some(({ past }) => past[1] === 0)
        ? [
            {
              text: message`Its thickness runs evenly from the top to the bottom, its axis at 45° to the polarisers.`,
            },
          ]
        : []),
      ...(scene.behind.some(({ past }) => past[1] === 0)
        ? [{ text: message`Past ${name} crossed polarisers leave black.`, of: 'beside' as const }]
        : []),
      edge,
    ];
  }
  const layer = layerOf(bench);
  if (!layer)
    return [
      { text: message`${name} is drawn as a flat mirror without a colour of its own.` },
      edge,
    ];
  const thickness = thicknessOf(bench);
  if (!thickness) {
    const needed = figureOf(layer.thickness, layer.name);
    return [edge, { text: withReason(message`The film has no colours here`, needed) }];
  }
  const { from, to } = thickness;
  if (from === to) return [edge];
  return [
    edge,
    {
      text: message`The thickness runs evenly from ${from} nm at the top to ${to} nm at the bottom; a real film flows.`,
    },
  ];
}

/**
 * Where a glossy or polished solid shows each light. Relief faces every way; the flat card that is drawn
 * does not.
 */
function ofHighlight(bench: Bench, figures: ShotFigures): readonly Note[] {
  const isPolished = mirrorKind(bench) === 'surface' && natureOf(bench.subject)?.shape === 'relief';
  if (!(isGloss(bench) || isPolished) || !bench.lights.known) return [];
  const { highlight } = figures;
  const facing = bench.lights.value.filter((light) => !shinesThrough(light, bench));
  const notes = facing.map(({ name, ...light }) => {
    const place = placeOfImage({ name, ...light }, bench, figures);
    if (!place.known)
      return withReason(message`Where the subject shows ${name} is not known`, place);
    const where = saidInFrame(place.value);
    if (!highlight.known || highlight.value.light !== name)
      return message`The reflection of ${name} lies ${where}.`;
    const { stops } = highlight.value;
    return stops < 0
      ? message`The reflection of ${name} lies ${where}, ${say.stops(-stops)} under mid-grey.`
      : message`The reflection of ${name} lies ${where}, ${say.stops(stops)} over mid-grey.`;
  });
  const hasRelief = facing.some((light) => {
    const place = placeOfImage(light, bench, figures);
    return place.known && !place.value.isFlat;
  });
  return [
    ...notes.map((text) => ({ text })),
    ...(hasRelief
      ? [{ text: message`Relief may show the lights anywhere; no relief is drawn.` }]
      : []),
  ];
}

/** Where white begins, and whose word that is. */
function ofWhite({ body }: Bench, latitude: Figure<number>): readonly Note[] {
  if (!body || !latitude.known) return [];
  const stops = say.stops(latitude.value);
  const { low, high } = highlightLatitudeOf().prior;
  return [
    {
      text:
        body.fields['highlight-latitude'].state === 'missing'
          ? message`White is burnt out: more than ${stops} over mid-grey, assumed of ${body.name} (${low} to ${high}).`
          : message`White is burnt out: more than ${stops} over mid-grey, which ${body.name} records.`,
      of: 'clipped',
    },
  ];
}
