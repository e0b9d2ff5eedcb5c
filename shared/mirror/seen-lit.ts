/**
 * Which part of the frame the pupil sees lit: from some point of it at all, and from every point.
 *
 * Outside the first the picture is black. Between the two it dims: the light reaches the sensor
 * through part of the aperture alone. A flat film is exact: pupil and mirror image of the light are
 * convex and lie on both sides of the film, so the film's points that any ray between them passes
 * are where their convex hull meets the film, and those that all rays from them to the pupil pass
 * are what the light's outlines as seen from the points of the pupil's edge share.
 */
import { type FilmSurface, filmPoint } from './film-surface.ts';
import { checkedFrame, coversFrame, type FrameView, pupilRim } from './patch.ts';
import { cut, cutToRectangle, hull, inside, moments, type Point2 } from './polygon.ts';
import {
  type Face,
  insideFaceMm,
  meetPlane,
  planeOf,
  type Source,
  sourceOutline,
} from './source.ts';
import { between, dot, reflected, scale, sub, unit, type Vec } from './vector.ts';

/** Areas of the frame, mm². */
interface SeenLit {
  readonly byAnyMm2: number;
  readonly byAllMm2: number;
}

export interface Shade {
  /** Share of the frame that no point of the pupil sees lit, 0 to 1. */
  readonly blackShare: number;
  /** Share of the frame that only part of the pupil sees lit, 0 to 1. */
  readonly dimShare: number;
}

/** Pupil and round lights are drawn with so many sides. */
const SIDES = 24;

/** Less than this part of the frame is rounding. */
const NOTHING = 1e-9;

/**
 * What of the frame is black and what only dims.
 *
 * @throws RangeError where frame, distance or light have no extent
 */
export function shadeOf(view: FrameView, surface: FilmSurface, source: Source): Shade {
  checkedFrame(view);
  const isFlat = surface.curvaturePerMm === 0;
  if (isFlat && coversFrame(view, surface, source)) return { blackShare: 0, dimShare: 0 };
  const { byAnyMm2, byAllMm2 } = isFlat
    ? byImage(view, surface.normal, source)
    : byRays(view, surface, source);
  const without = (area: number): number => {
    const share = 1 - area / (view.widthMm * view.heightMm);
    return share <= NOTHING ? 0 : Math.min(1, share);
  };
  const blackShare = without(byAnyMm2);
  return { blackShare, dimShare: Math.max(0, without(byAllMm2) - blackShare) };
}

function byImage(view: FrameView, normal: Vec, source: Source): SeenLit {
  const { any, all } = filmSeenLit(view, normal, source);
  return { byAnyMm2: areaInFrame(view, any), byAllMm2: areaInFrame(view, all) };
}

/** Outlines on a flat film, from its middle, mm: what any and what every point of the pupil sees lit. */
export function filmSeenLit(
  view: FrameView,
  normal: Vec,
  source: Source,
): { readonly any: readonly Vec[]; readonly all: readonly Vec[] } {
  const facing = cut(sourceOutline(source, SIDES), (p) => dot(normal, p), between);
  const pupil = pupilRim(view, SIDES);
  const before = pupil.every((p) => dot(normal, p) > 0);
  const inFront = before ? pupil : cut(pupil, (p) => dot(normal, p), between);
  if (facing.length < 3 || inFront.length === 0) return { any: [], all: [] };
  const images = facing.map((p) => sub(p, scale(normal, 2 * dot(normal, p))));
  /** Where the ray from a point of the pupil to one of the image passes the film. */
  const crossing = (from: Vec, to: Vec): Vec => {
    const depth = dot(normal, from);
    const behind = dot(normal, to);
    return depth === behind ? from : between(from, to, depth / (depth - behind));
  };
  const outlines = inFront.map((from) => images.map((to) => crossing(from, to)));
  const [right, up] = axesOf(normal);
  const flat = (p: Vec): Point2 => [dot(p, right), dot(p, up)];
  const onFilm = ([a, b]: Point2): Vec => [
    a * right[0] + b * up[0],
    a * right[1] + b * up[1],
    a * right[2] + b * up[2],
  ];
  const any = hull(outlines.flatMap((outline) => outline.map(flat)));
  const all = before
    ? outlines
        .map((outline) => hull(outline.map(flat)))
        .reduce((rest, outline) => inside(rest, outline))
    : [];
  return { any: any.map(onFilm), all: all.map(onFilm) };
}

/** Two axes in the film, each square to its normal. */
function axesOf(normal: Vec): readonly [Vec, Vec] {
  // The film faces the lens more or less, so the camera's right is never along its normal alone.
  const right = unit(sub([1, 0, 0], scale(normal, normal[0])));
  const up: Vec = [
    normal[1] * right[2] - normal[2] * right[1],
    normal[2] * right[0] - normal[0] * right[2],
    normal[0] * right[1] - normal[1] * right[0],
  ];
  return [right, up];
}

/** A polygon of the film as the middle of the pupil sees it in the plane of focus, mm. */
export function inPlaneOfFocus(view: FrameView, polygon: readonly Vec[]): readonly Point2[] {
  const z = view.pupilDistanceMm;
  // Film beside or behind the pupil is in nobody's frame, and would project upside down.
  const ahead = cut(polygon, (p) => z * 0.999 - p[2], between);
  return ahead.map((p): Point2 => [(p[0] * z) / (z - p[2]), (p[1] * z) / (z - p[2])]);
}

/** Area of the frame that a polygon of the film takes, mm². */
const areaInFrame = (view: FrameView, polygon: readonly Vec[]): number =>
  moments(cutToRectangle(inPlaneOfFocus(view, polygon), view.widthMm / 2, view.heightMm / 2)).area;

const CELLS = 16;

/** How far a point of the frame is inside what any, and what every point of the pupil sees lit. */
interface Sample {
  readonly at: Point2;
  readonly any: number;
  readonly all: number;
}

const betweenSamples = (a: Sample, b: Sample, t: number): Sample => ({
  at: [a.at[0] + (b.at[0] - a.at[0]) * t, a.at[1] + (b.at[1] - a.at[1]) * t],
  any: a.any + (b.any - a.any) * t,
  all: a.all + (b.all - a.all) * t,
});

/** Rays from so many points of the pupil's edge, on a circle of such a radius that their areas agree. */
const RAYS = 24;
const RAY_RADIUS = Math.sqrt((Math.PI / RAYS / Math.sin((2 * Math.PI) / RAYS)) * 2);

/** A film without a mirror image of its own: at the corners of a grid's cells, each cell then cut. */
function byRays(view: FrameView, surface: FilmSurface, source: Source): SeenLit {
  const plane = planeOf(source);
  const centre: Vec = [0, 0, view.pupilDistanceMm];
  const pupil = pupilRim({ ...view, pupilMm: view.pupilMm * RAY_RADIUS }, RAYS);
  const sampleAt = (column: number, row: number): Sample | null => {
    const x = (column / CELLS - 0.5) * view.widthMm;
    const y = (row / CELLS - 0.5) * view.heightMm;
    const point = filmPoint(surface, [x, y, 0], centre);
    if (point === null) return null;
    const hits: Point2[] = [];
    for (const from of pupil) {
      const hit = meetPlane(plane, point.at, reflected(sub(from, point.at), point.normal));
      if (hit) hits.push(hit);
    }
    if (hits.length === 0) return null;
    const all =
      hits.length < pupil.length
        ? -NOWHERE_MM
        : hits.reduce((depth, hit) => Math.min(depth, insideFaceMm(source.face, hit)), NOWHERE_MM);
    return { at: [x, y], any: overlapMm(hits, source.face), all };
  };
  const samples = Array.from({ length: (CELLS + 1) ** 2 }, (_, i) =>
    sampleAt(i % (CELLS + 1), Math.floor(i / (CELLS + 1))),
  );
  let [byAnyMm2, byAllMm2] = [0, 0];
  for (let row = 0; row < CELLS; row += 1)
    for (let column = 0; column < CELLS; column += 1) {
      const first = row * (CELLS + 1) + column;
      const cell = [first, first + 1, first + CELLS + 2, first + CELLS + 1]
        .map((i) => samples[i] ?? null)
        .filter((corner) => corner !== null);
      const area = (by: (sample: Sample) => number): number =>
        moments(cut(cell, by, betweenSamples).map(({ at }) => at)).area;
      byAnyMm2 += area(({ any }) => any);
      byAllMm2 += area(({ all }) => all);
    }
  return { byAnyMm2, byAllMm2 };
}

/** Farther outside than any light, mm. */
const NOWHERE_MM = 1e6;

/**
 * How far the convex outline of the points reaches into a face, mm; negative: how far it stays
 * outside. By the axis that parts them most, which is square to an edge of one of them
 * (separating axes), or for a round face by its middle's distance.
 */
function overlapMm(points: readonly Point2[], face: Face): number {
  if (face.shape === 'round') return face.diameterMm / 2 - outsideMm([0, 0], points);
  const [w, h] = [face.widthMm / 2, face.heightMm / 2];
  let [left, right, low, high] = [NOWHERE_MM, -NOWHERE_MM, NOWHERE_MM, -NOWHERE_MM];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  let overlap = Math.min(w - left, right + w, h - low, high + h);
  forEdges(points, (a, nx, ny) => {
    // The corner of the face that lies farthest inside the edge.
    overlap = Math.min(overlap, nx * a[0] + ny * a[1] + Math.abs(nx) * w + Math.abs(ny) * h);
  });
  return overlap;
}

/** How far a point lies outside a convex outline, mm; negative: inside it. */
function outsideMm([x, y]: Point2, outline: readonly Point2[]): number {
  let [beyond, nearest] = [-NOWHERE_MM, NOWHERE_MM];
  for (const a of outline) nearest = Math.min(nearest, Math.hypot(x - a[0], y - a[1]));
  forEdges(outline, (a, nx, ny, length) => {
    const off = nx * (x - a[0]) + ny * (y - a[1]);
    beyond = Math.max(beyond, off);
    const along = ny * (a[0] - x) - nx * (a[1] - y);
    if (along >= 0 && along <= length) nearest = Math.min(nearest, Math.abs(off));
  });
  return beyond <= 0 && outline.length > 2 ? beyond : nearest;
}

/** Each edge of a convex outline: its beginning, its unit normal outward, its length. */
function forEdges(
  outline: readonly Point2[],
  visit: (from: Point2, nx: number, ny: number, length: number) => void,
): void {
  if (outline.length < 3) return;
  const twice = outline.reduce((sum, a, i) => {
    const b = outline[(i + 1) % outline.length] as Point2;
    return sum + a[0] * b[1] - b[0] * a[1];
  }, 0);
  const sign = twice < 0 ? -1 : 1;
  for (let i = 0; i < outline.length; i += 1) {
    const a = outline[i] as Point2;
    const b = outline[(i + 1) % outline.length] as Point2;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    visit(a, (sign * (b[1] - a[1])) / length, (-sign * (b[0] - a[0])) / length, length);
  }
}
