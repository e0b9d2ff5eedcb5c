/** A flat or bowed subject: a film, a polished or a matt plane. */
import { filmPoint } from '../mirror/film-surface.ts';
import { dot, sub, unit, type Vec } from '../mirror/vector.ts';
import type { Body, Scene } from './scene.ts';
import {
  addBehind,
  addLight,
  addReflection,
  EDGE,
  isInTheWay,
  returnedShare,
  SEES,
  type Seen,
} from './seen.ts';

type Flat = Extract<Body, { shape: 'flat' }>;

/** Width of a line on a matt subject, as a share of the distance of two. */
const LINE = 0.06;

/** Axes of a flat body's own surface: across and up as the camera sees them. */
interface Axes {
  readonly right: Vec;
  readonly up: Vec;
}

export function axesOf({ surface: { normal } }: Flat): Axes {
  // The normal of a tilt about the level axis has no x, that of one about the upright axis no y.
  const [x, y, z] = normal;
  return { right: unit([z, 0, -x]), up: unit([-x * y, x * x + z * z, -y * z]) };
}

/**
 * Adds what the ray from the pupil through a point of the frame sees.
 *
 * @param lit light that the subject scatters there
 */
export function seeFlat(
  scene: Scene,
  flat: Flat,
  axes: Axes,
  pupil: Vec,
  frameAt: Vec,
  lit: readonly [number, number, number],
  seen: Seen,
): void {
  const point = filmPoint(flat.surface, frameAt, pupil);
  if (scene.inTheWay.length > 0 && isInTheWay(scene.inTheWay, pupil, point?.at ?? frameAt)) {
    seen[SEES.hidden]! += 1;
    return;
  }
  if (point === null) {
    beside(scene, frameAt, pupil, seen);
    return;
  }
  const across = dot(point.at, axes.right);
  const up = dot(point.at, axes.up);
  const outside = outsideMm(flat, across, up);
  if (outside > 0) {
    if (outside < EDGE * scene.camera.widthMm) seen[SEES.mark]! += 1;
    beside(scene, point.at, pupil, seen);
    return;
  }
  if (
    scene.linesMm !== undefined &&
    (isOnLine(across, scene.linesMm) || isOnLine(up, scene.linesMm))
  )
    seen[SEES.mark]! += 1;
  addLight(seen, lit);
  const down = Math.max(0, Math.min(1, 0.5 - up / flat.runsOverMm));
  const toward = unit(sub(pupil, point.at));
  if (scene.behind.length > 0 || (scene.clearShare > 0 && scene.background[1] > 0)) {
    const kept = 1 - returnedShare(scene, down, dot(point.normal, toward));
    const through = { thicknessShare: down, share: scene.clearShare * kept };
    addBehind(scene, point.at, toward, seen, through);
  }
  addReflection(scene, point.at, point.normal, toward, down, 1, seen);
}

function beside(scene: Scene, at: Vec, pupil: Vec, seen: Seen): void {
  addBehind(scene, at, unit(sub(pupil, at)), seen);
  seen[SEES.beside]! += 1;
}

/** How far a point of the surface lies outside the subject, mm; 0 or less inside. */
function outsideMm({ edge }: Flat, across: number, up: number): number {
  if (!edge) return 0;
  return edge.shape === 'round'
    ? Math.hypot(across, up) - edge.diameterMm / 2
    : Math.max(Math.abs(across) - edge.widthMm / 2, Math.abs(up) - edge.heightMm / 2);
}

const isOnLine = (at: number, everyMm: number): boolean => {
  const place = at / everyMm;
  return Math.abs(place - Math.round(place)) < LINE / 2;
};
