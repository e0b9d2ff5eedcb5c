/** The camera of a scene, and the subject as a body in front of it. */

import { frontDiameter, frontDiameterOf } from '../figures/assumed.ts';
import type { Bench } from '../figures/bench.ts';
import { derive, type Figure, figureOf, known, unknownOf } from '../figures/figure.ts';
import { layerOf } from '../figures/film-share.ts';
import { extentOf, frameView, surfaceOf } from '../figures/flat-mirror.ts';
import { mirrorKind } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { natureOf } from '../figures/subject-kinds.ts';
import { THICKEST_NM } from '../film/reflectance.ts';
import { ifKnown } from '../plan/field.ts';
import type { Body, Camera, Edge, Front } from './scene.ts';

/** Camera and body in the coordinates of the body: a bubble's middle lies behind the plane of focus. */
export interface Placed {
  readonly camera: Camera;
  readonly body: Body;
  readonly front: Front | undefined;
}

export function placedOf(bench: Bench, figures: ShotFigures): Figure<Placed> {
  const frame = frameView(bench, figures);
  const body =
    natureOf(bench.subject)?.shape === 'ball' ? ballOf(bench, figures) : flatOf(bench, figures);
  const airyMm = derive([figures.airyUm, figures.magnification], (um, m) => um / 1000 / m);
  return derive(
    [frame, body, airyMm, figures.workingDistanceMm],
    (view, { body: it, focusAtMm }, airy, roomMm): Placed => ({
      camera: {
        widthMm: view.widthMm,
        heightMm: view.heightMm,
        focusAtMm,
        pupilAtMm: view.pupilDistanceMm + focusAtMm,
        pupilMm: view.pupilMm,
        airyMm: airy,
      },
      body: it,
      front: frontOf(bench, roomMm + focusAtMm),
    }),
  );
}

interface Standing {
  readonly body: Body;
  readonly focusAtMm: number;
}

function ballOf({ subject }: Bench, figures: ShotFigures): Figure<Standing> {
  if (!subject) return unknownOf([figures.fieldMm]);
  return derive(
    [figureOf(subject.fields.diameter, subject.name), figures.focusBehindNearestMm],
    (diameterMm, behindMm): Standing => ({
      body: { shape: 'ball', radiusMm: diameterMm / 2 },
      focusAtMm: diameterMm / 2 - behindMm,
    }),
  );
}

function flatOf(bench: Bench, figures: ShotFigures): Figure<Standing> {
  const frame = frameView(bench, figures);
  return derive(
    [frame, surfaceOf(bench, frame), extentOf(bench), edgeOf(bench)],
    ({ heightMm }, surface, extent, edge): Standing => ({
      body: {
        shape: 'flat',
        surface,
        edge: edge ?? undefined,
        runsOverMm: extent?.height ?? (edge?.shape === 'round' ? edge.diameterMm : heightMm),
      },
      focusAtMm: 0,
    }),
  );
}

function edgeOf({ subject }: Bench): Figure<Edge | null> {
  if (!subject) return known(null);
  const { size, diameter } = subject.fields;
  if (size.state !== 'missing')
    return derive(
      [figureOf(size, subject.name)],
      ({ width, height }): Edge => ({ shape: 'rectangle', widthMm: width, heightMm: height }),
    );
  if (diameter.state === 'missing') return known(null);
  return derive(
    [figureOf(diameter, subject.name)],
    (diameterMm): Edge => ({ shape: 'round', diameterMm }),
  );
}

/** The front of a lens that the subject shows; its diameter may be written as a range, or assumed. */
function frontOf(bench: Bench, atMm: number): Front | undefined {
  const { lens } = bench;
  if (!lens || mirrorKind(bench) === undefined) return undefined;
  const middle = frontDiameter(lens);
  if (!middle.known) return undefined;
  const field = lens.fields['front-diameter'];
  const range = field.state === 'known' ? field.range : undefined;
  const prior = field.state === 'missing' ? frontDiameterOf(lens.fields)?.prior : undefined;
  return {
    atMm,
    leastMm: range?.low ?? prior?.low ?? middle.value,
    mostMm: range?.high ?? prior?.high ?? middle.value,
  };
}

/** Thickness of a film that has colours, nm; undefined: none is given, or it has long lost them. */
export function thicknessOf(bench: Bench): { from: number; to: number } | undefined {
  const layer = layerOf(bench);
  const thickness = layer && ifKnown(layer.thickness);
  return thickness && thickness.from < THICKEST_NM ? thickness : undefined;
}
