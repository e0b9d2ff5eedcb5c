/** Subject, lens and lights in one plane of the lens axis, in mm: what the drawings of the set show. */
import { natureOf } from '../../../figures/subject-kinds.ts';
import { filmPoint, filmSurface } from '../../../mirror/film-surface.ts';
import { meetPlane, onPlane, planeOf, type Source } from '../../../mirror/source.ts';
import { add, reflected, scale, sub, unit, type Vec } from '../../../mirror/vector.ts';
import { ifKnown } from '../../../plan/field.ts';
import type { SaidShot } from '../said.ts';

/** How much of the lens is drawn behind its rim, as a share of the distance in front of it. */
const SHOWN_LENS = 0.22;

type Side = 'level' | 'upright';
/**
 * Along the axis toward the lens, and up; from above to the left, since the right hand of a camera
 * that looks to the right of the page lies below. mm.
 */
export type Spot = readonly [z: number, across: number];

const spotOf = (side: Side, [x, y, z]: Vec): Spot => [z, side === 'level' ? y : -x];

export interface Scene {
  readonly rim: readonly [Spot, Spot];
  readonly lensEnd: number;
  readonly subject: readonly Spot[];
  readonly rays: readonly (readonly Spot[])[];
  readonly thrown: readonly (readonly Spot[])[];
  readonly lamps: readonly {
    readonly name: string;
    /** In the plane of the tilt a face is seen edge on, and is a line. */
    readonly face: readonly [Spot, Spot];
    /** In the other plane: its outline as it is seen from there; null: in that of the tilt. */
    readonly outline: readonly Spot[] | null;
  }[];
}

/** What is placed around the subject. */
export type PlacedLight = { readonly name: string; readonly source: Source };

/**
 * The set in one plane of the lens axis.
 *
 * @param side level: the axis and the upright; upright: the axis and what is level
 */
export function sceneOf(
  { bench, figures }: SaidShot,
  room: number,
  rimMm: number,
  [width, height]: readonly [number, number],
  placed: readonly PlacedLight[],
  side: Side,
): Scene | null {
  const along = side === 'level' ? height : width;
  if (!Number.isFinite(along)) return null;
  const trace = figures.trace.known ? figures.trace.value : null;
  const u = trace?.pupilDistanceMm ?? room;
  const pupil: Vec = [0, 0, u];
  const tilt = bench.tiltRad.known ? bench.tiltRad.value : 0;
  const surface = filmSurface(tilt, bench.tiltAxis);
  const isFlatMirror = figures.leastTiltRad.known;
  const edges = [-along / 2, along / 2].flatMap((across) => {
    const frameAt: Vec = side === 'level' ? [0, across, 0] : [across, 0, 0];
    const point = filmPoint(surface, frameAt, pupil);
    return point ? [point] : [];
  });
  const best = placed.find(
    ({ name }) => figures.darkFrame.known && name === figures.darkFrame.value.light,
  );
  const light = best ?? placed[0];
  const thrown = isFlatMirror
    ? edges.map(({ at, normal }) => {
        const out = reflected(unit(sub(pupil, at)), normal);
        const plane = light && planeOf(light.source);
        const hit = plane && meetPlane(plane, at, out);
        const end = hit
          ? onPlane(plane, ...hit)
          : add(at, scale(out, light?.source.distanceMm ?? room));
        return [spotOf(side, at), spotOf(side, end)];
      })
    : [];
  return {
    rim: [
      [room, -rimMm / 2],
      [room, rimMm / 2],
    ],
    lensEnd: room * (1 + SHOWN_LENS),
    subject: subjectOf(bench, side, [width, height], tilt, figures),
    rays: edges.map(({ at }) => inDrawing(spotOf(side, at), u, room * (1 + SHOWN_LENS))),
    thrown,
    lamps: placed.map(({ name, source }) => ({
      name,
      face: faceOf(side, source),
      outline:
        side === bench.tiltAxis ? null : faceCorners(source).map((corner) => spotOf(side, corner)),
    })),
  };
}

/** The ray from the pupil to `spot`, from where the lens's drawn part begins. */
function inDrawing([z, across]: Spot, pupil: number, lensEnd: number): readonly Spot[] {
  const from = Math.min(pupil, lensEnd);
  return [
    [from, (across * (pupil - from)) / (pupil - z)],
    [z, across],
  ];
}

/** The light's face as it is seen along the level (or the upright) axis. */
function faceOf(side: Side, source: Source): readonly [Spot, Spot] {
  const { face } = source;
  const plane = planeOf(source);
  const half =
    face.shape === 'round'
      ? face.diameterMm / 2
      : (side === 'level' ? face.heightMm : face.widthMm) / 2;
  const end = (sign: number): Spot =>
    spotOf(
      side,
      side === 'level' ? onPlane(plane, 0, sign * half) : onPlane(plane, sign * half, 0),
    );
  return [end(-1), end(1)];
}

const ROUND_STEPS = 48;

/** The outline of a light's face. */
export function faceCorners(source: Source): readonly Vec[] {
  const { face } = source;
  const plane = planeOf(source);
  if (face.shape === 'round')
    return Array.from({ length: ROUND_STEPS }, (_, step) => {
      const turn = (2 * Math.PI * step) / ROUND_STEPS;
      const radius = face.diameterMm / 2;
      return onPlane(plane, radius * Math.cos(turn), radius * Math.sin(turn));
    });
  const [w, h] = [face.widthMm / 2, face.heightMm / 2];
  return [
    onPlane(plane, -w, -h),
    onPlane(plane, w, -h),
    onPlane(plane, w, h),
    onPlane(plane, -w, h),
  ];
}

function subjectOf(
  { subject, tiltAxis }: SaidShot['bench'],
  side: Side,
  [width, height]: readonly [number, number],
  tilt: number,
  figures: SaidShot['figures'],
): readonly Spot[] {
  const { size, diameter, depth } = subject!.fields;
  const shape = natureOf(subject)?.shape;
  const extent = (about: Side): number =>
    ifKnown(diameter) ?? sizeAlong(ifKnown(size), about) ?? (about === 'level' ? height : width);
  const across = extent(side);
  if (shape === 'ball') {
    const r = across / 2;
    const behind = figures.focusBehindNearestMm.known ? figures.focusBehindNearestMm.value : 0;
    return Array.from({ length: ROUND_STEPS }, (_, step) => {
      const turn = (2 * Math.PI * step) / ROUND_STEPS;
      return [behind - r + r * Math.cos(turn), r * Math.sin(turn)];
    });
  }
  const thick = shape === 'relief' ? (ifKnown(depth) ?? 0) : 0;
  const [sin, cos] = [Math.sin(tilt), Math.cos(tilt)];
  if (side !== tiltAxis) {
    // Tilted out of this plane: it is seen as deep as the tilt makes it.
    const deep = (thick * cos + extent(tiltAxis) * Math.abs(sin)) / 2;
    const half = across / 2;
    return [
      [deep, -half],
      [deep, half],
      [-deep, half],
      [-deep, -half],
    ];
  }
  const hand = side === 'level' ? 1 : -1;
  const turned = (a: number, z: number): Spot => [z * cos - a * sin, hand * (a * cos + z * sin)];
  const [half, deep] = [across / 2, thick / 2];
  return [turned(-half, deep), turned(half, deep), turned(half, -deep), turned(-half, -deep)];
}

const sizeAlong = (
  size: { readonly width: number; readonly height: number } | undefined,
  about: Side,
): number | undefined => size && (about === 'level' ? size.height : size.width);
