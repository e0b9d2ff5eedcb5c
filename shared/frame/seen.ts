/** What one ray from the pupil sees, added up over a pixel. */
import { surfaceReflectances } from '../exposure/polariser.ts';
import { insideFaceMm, meetPlane, type Plane, planeOf, type Source } from '../mirror/source.ts';
import { dot, reflected, scale, sub, type Vec } from '../mirror/vector.ts';
import type { Front, Scene } from './scene.ts';

/** Width of the mark along a subject's edge, as a share of the frame's width. */
export const EDGE = 0.005;

/** Sums over the rays of a pixel, by `SEES`: linear light, and how many rays see what. */
export type Seen = Float64Array;

export const SEES = {
  red: 0,
  green: 1,
  blue: 2,
  /** The lens's front, in the subject. */
  lens: 3,
  /** A light's face, in the subject. */
  lit: 4,
  /** A light's back, in the way. */
  hidden: 5,
  /** A line that lies on a matt subject, or its edge: neither is light. */
  mark: 6,
  /** The background, beside the subject. */
  beside: 7,
} as const;

export const nothingSeen = (): Seen => new Float64Array(8);

export function addLight(
  seen: Seen,
  [red, green, blue]: readonly [number, number, number],
  times = 1,
): void {
  seen[SEES.red]! += red * times;
  seen[SEES.green]! += green * times;
  seen[SEES.blue]! += blue * times;
}

/** Whether a light stands between the pupil and where its ray ends. */
export function isInTheWay(sources: readonly Source[], pupil: Vec, end: Vec): boolean {
  return sources.some((source) => {
    const plane = planeOf(source);
    const way = sub(end, pupil);
    const turned =
      dot(way, plane.normal) < 0 ? plane : { ...plane, normal: scale(plane.normal, -1) };
    const reach = dot(sub(plane.centre, pupil), turned.normal) / dot(way, turned.normal);
    if (!(reach > 0 && reach < 1)) return false;
    const hit = meetPlane(turned, pupil, way);
    return hit !== null && insideFaceMm(source.face, hit) >= 0;
  });
}

interface Faced {
  readonly source: Source;
  readonly plane: Plane;
}

/** The nearest of the faces that a ray meets, and how far along it lies; undefined: none. */
function nearestFace<F extends Faced>(
  faces: readonly F[],
  at: Vec,
  along: Vec,
): { readonly face: F; readonly reach: number } | undefined {
  let nearest: { face: F; reach: number } | undefined;
  for (const face of faces) {
    const { plane } = face;
    const hit = meetPlane(plane, at, along);
    if (hit === null || insideFaceMm(face.source.face, hit) < 0) continue;
    const reach = dot(sub(plane.centre, at), plane.normal) / dot(along, plane.normal);
    if (nearest === undefined || reach < nearest.reach) nearest = { face, reach };
  }
  return nearest;
}

/**
 * Adds what is behind a point: the light that the straight ray meets there, or the background.
 *
 * @param through where in the range of thickness the ray goes through the subject, and what share of
 *   the background comes through it; left out: it goes past
 */
export function addBehind(
  { behind, background }: Scene,
  at: Vec,
  toward: Vec,
  seen: Seen,
  through?: { readonly thicknessShare: number; readonly share: number },
): void {
  const face = behind.length > 0 ? nearestFace(behind, at, scale(toward, -1))?.face : undefined;
  if (!face) {
    addLight(seen, background, through?.share ?? 1);
    return;
  }
  seen[SEES.lit]! += 1;
  if (!through) {
    addLight(seen, face.past);
    return;
  }
  face.through.read(through.thicknessShare, returned);
  for (let c = 0; c < 3; c += 1) seen[c]! += returned[c]!;
}

/** Room for what a film's table answers with. */
const returned = new Float64Array(4);

/**
 * Adds what a mirror-like surface shows of lens and lights at a point: the nearest that the ray meets.
 *
 * @param at the point, `normal` its unit normal on the side of the ray, `toward` the unit direction back
 *   along the ray
 * @param weight share of the light that gets from there to the pupil
 */
export function addReflection(
  { shown, front }: Pick<Scene, 'shown' | 'front'>,
  at: Vec,
  normal: Vec,
  toward: Vec,
  thicknessShare: number,
  weight: number,
  seen: Seen,
): void {
  const away = reflected(toward, normal);
  const nearest = nearestFace(shown, at, away);
  const covered = front
    ? coveredByFront(front, at, away, nearest?.reach ?? Number.POSITIVE_INFINITY)
    : 0;
  seen[SEES.lens]! += covered;
  if (!nearest || covered === 1) return;
  const through = weight * (1 - covered);
  seen[SEES.lit]! += 1 - covered;
  const cos = Math.min(1, dot(normal, toward));
  const of = nearest.face.returned;
  if (of.kind === 'even') addLight(seen, of.colour, through);
  else if (of.kind === 'clear') {
    const { s, p } = surfaceReflectances(of.index, Math.acos(cos));
    addLight(seen, of.colour, (through * (s + p)) / 2);
  } else {
    const { table } = of;
    table.read(table.fromNm + (table.toNm - table.fromNm) * thicknessShare, cos, returned);
    seen[SEES.red]! += through * returned[0]!;
    seen[SEES.green]! += through * returned[1]!;
    seen[SEES.blue]! += through * returned[2]!;
  }
}

/** R there, the share of the luminance that is returned; 0: no light shows it. */
export function returnedShare({ shown }: Scene, thicknessShare: number, cos: number): number {
  const of = shown[0]?.returned;
  if (of === undefined) return 0;
  if (of.kind === 'even') return of.share;
  if (of.kind === 'clear') {
    const { s, p } = surfaceReflectances(of.index, Math.acos(cos));
    return (s + p) / 2;
  }
  const { table } = of;
  table.read(table.fromNm + (table.toNm - table.fromNm) * thicknessShare, cos, returned);
  return returned[3]!;
}

/** Share of the ray that the lens's front takes: where its edge is uncertain, it fades. */
function coveredByFront(front: Front, at: Vec, away: Vec, beforeMm: number): number {
  if (away[2] <= 0) return 0;
  const reach = (front.atMm - at[2]) / away[2];
  if (reach <= 0 || reach >= beforeMm) return 0;
  const [x, y] = [at[0] + away[0] * reach, at[1] + away[1] * reach];
  const radius = Math.sqrt(x * x + y * y);
  const [least, most] = [front.leastMm / 2, front.mostMm / 2];
  if (radius <= least) return 1;
  return radius >= most ? 0 : (most - radius) / (most - least);
}
