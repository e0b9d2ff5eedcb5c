/**
 * The family of angles: the patch of light that a mirror-like film needs so that the whole frame
 * shows light and nothing else. Rays from the frame's edge and the pupil's rim are thrown back by
 * the film onto the plane of the light; their hull is the patch. Law of reflection, no small
 * angles. For a flat film square in the middle it is, per axis,
 * extent·(z + s)/z + D·s/z at distance s, z the distance to the pupil, in the direction 2·tilt.
 */
import { type FilmSurface, filmPoint } from './film-surface.ts';
import { requireNotNegative, requirePositive } from './range.ts';
import {
  type Face,
  insideFaceMm,
  meetPlane,
  type Plane,
  planeAt,
  planeOf,
  type Source,
} from './source.ts';
import { reflected, sub, unit, type Vec } from './vector.ts';

/** What the camera sees of the film. */
export interface FrameView {
  /** Frame in the plane of focus, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** u: subject to entrance pupil, mm. */
  readonly pupilDistanceMm: number;
  /** D: diameter of the entrance pupil, mm. */
  readonly pupilMm: number;
}

export function checkedFrame(view: FrameView): void {
  requirePositive('the width of the frame', view.widthMm);
  requirePositive('the height of the frame', view.heightMm);
  requirePositive('the distance to the pupil u', view.pupilDistanceMm);
  requireNotNegative('the pupil D', view.pupilMm);
}

const PUPIL_RIM_POINTS = 48;

/** Points of the pupil's rim; the pupil's middle alone where it is a pinhole. */
export function pupilRim(view: FrameView, points = PUPIL_RIM_POINTS): readonly Vec[] {
  if (view.pupilMm === 0) return [[0, 0, view.pupilDistanceMm]];
  return Array.from({ length: points }, (_, i) => {
    const turn = (2 * Math.PI * i) / points;
    const radius = view.pupilMm / 2;
    return [radius * Math.cos(turn), radius * Math.sin(turn), view.pupilDistanceMm];
  });
}

/** The frame's corners; on a bowed film also points between, where the extremes may lie. */
function framePoints(view: FrameView, surface: FilmSurface): readonly Vec[] {
  const steps = surface.curvaturePerMm === 0 ? 1 : 8;
  const at = (i: number): number => i / steps - 0.5;
  return Array.from({ length: steps + 1 }, (_, row) => row).flatMap((row) =>
    Array.from(
      { length: steps + 1 },
      (_, column): Vec => [at(column) * view.widthMm, at(row) * view.heightMm, 0],
    ),
  );
}

/** The patch on a plane, in the plane's own axes, mm. */
interface Patch {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
  /** Its points: where the extreme rays meet the plane. */
  readonly points: readonly (readonly [number, number])[];
}

/**
 * The patch on any plane.
 *
 * @returns null where part of the frame throws its rays past the plane, so that no light there
 *   could fill it
 */
function patchOnPlane(view: FrameView, surface: FilmSurface, plane: Plane): Patch | null {
  checkedFrame(view);
  const centre: Vec = [0, 0, view.pupilDistanceMm];
  const points: (readonly [number, number])[] = [];
  for (const frameAt of framePoints(view, surface)) {
    const point = filmPoint(surface, frameAt, centre);
    if (point === null) return null;
    for (const pupil of pupilRim(view)) {
      const hit = meetPlane(plane, point.at, reflected(unit(sub(pupil, point.at)), point.normal));
      if (hit === null) return null;
      points.push(hit);
    }
  }
  const rights = points.map(([right]) => right);
  const ups = points.map(([, up]) => up);
  return {
    leftMm: Math.min(...rights),
    rightMm: Math.max(...rights),
    bottomMm: Math.min(...ups),
    topMm: Math.max(...ups),
    points,
  };
}

export interface NeededLight {
  /** Direction of the patch's middle ray from the subject's centre, from the lens axis, rad. */
  readonly upRad: number;
  readonly acrossRad: number;
  /** Size of a rectangle, turned to face the subject there, that just fills the frame, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Where a light at distance s has to stand, and how large it has to be, to fill the frame: in the
 * mirrored direction (2·tilt from the axis), sized to the patch's farther edge on each axis.
 *
 * @param distanceMm s, from the subject's centre, mm
 * @returns null where no flat light at that distance fills it
 */
export function neededLight(
  view: FrameView,
  surface: FilmSurface,
  distanceMm: number,
): NeededLight | null {
  const middle = reflected([0, 0, 1], surface.normal);
  const upRad = Math.asin(Math.max(-1, Math.min(1, middle[1])));
  const acrossRad = Math.atan2(middle[0], middle[2]);
  const patch = patchOnPlane(view, surface, planeAt(distanceMm, upRad, acrossRad));
  if (patch === null) return null;
  return {
    upRad,
    acrossRad,
    widthMm: 2 * Math.max(-patch.leftMm, patch.rightMm),
    heightMm: 2 * Math.max(-patch.bottomMm, patch.topMm),
  };
}

/** How far the light's edges reach beyond the patch on each side, mm; negative: they fall short. */
interface Spare {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
  readonly topMm: number;
}

const reach = (face: Face): readonly [right: number, up: number] =>
  face.shape === 'round'
    ? [face.diameterMm / 2, face.diameterMm / 2]
    : [face.widthMm / 2, face.heightMm / 2];

/**
 * The patch against the light's own edges; for a round light, those of its bounding square.
 *
 * @returns null where part of the frame throws its rays past the light's plane
 */
export function spareAround(view: FrameView, surface: FilmSurface, source: Source): Spare | null {
  const patch = patchOnPlane(view, surface, planeOf(source));
  if (patch === null) return null;
  const [right, up] = reach(source.face);
  return {
    leftMm: patch.leftMm + right,
    rightMm: right - patch.rightMm,
    bottomMm: patch.bottomMm + up,
    topMm: up - patch.topMm,
  };
}

/** Whether every ray from frame and pupil ends in the light: nothing black, no soft edge. */
export function coversFrame(view: FrameView, surface: FilmSurface, source: Source): boolean {
  const patch = patchOnPlane(view, surface, planeOf(source));
  return patch?.points.every((point) => insideFaceMm(source.face, point) >= 0) ?? false;
}
