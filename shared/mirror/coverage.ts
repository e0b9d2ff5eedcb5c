/**
 * How much of the frame a light leaves dark in a mirror-like film, and on which side. How
 * much of that is black and how much only dims is told in `seen-lit.ts`.
 *
 * A flat film is exact in area: seen from a point of the pupil, the light's mirror image is a
 * convex polygon; what the frame's share of it is, is cut out and measured. A bowed film has no
 * such image, and is worked out by rays. Either is averaged over the pupil with the seven-point rule
 * of degree 5 for a disc (Abramowitz and Stegun 25.4.61), so soft edges count by what they lose.
 */
import { type FilmSurface, filmPoint } from './film-surface.ts';
import { checkedFrame, type FrameView } from './patch.ts';
import { cut, cutToRectangle, moments, type Point2 } from './polygon.ts';
import { type Face, meetPlane, planeOf, type Source, sourceOutline } from './source.ts';
import { add, between, dot, reflected, scale, sub, unit, type Vec } from './vector.ts';

export type FrameSide = 'none' | 'all' | 'around' | 'left' | 'right' | 'bottom' | 'top';

interface Coverage {
  /** Share of the frame's light that is lost, 0 to 1; an edge lost to half the pupil counts half. */
  readonly lostShare: number;
  /** Where in the picture the loss lies. */
  readonly side: FrameSide;
}

interface Lit {
  readonly area: number;
  readonly x: number;
  readonly y: number;
}

const AXIS_RING = Math.sqrt(2 / 3);

/** Points of the pupil and their weights, which sum to 1. */
function pupilRule(view: FrameView): readonly { at: Vec; weight: number }[] {
  const z = view.pupilDistanceMm;
  if (view.pupilMm === 0) return [{ at: [0, 0, z], weight: 1 }];
  const radius = (view.pupilMm / 2) * AXIS_RING;
  const ring = Array.from({ length: 6 }, (_, i) => {
    const turn = (Math.PI * i) / 3;
    const at: Vec = [radius * Math.cos(turn), radius * Math.sin(turn), z];
    return { at, weight: 1 / 8 };
  });
  return [{ at: [0, 0, z], weight: 1 / 4 }, ...ring];
}

/** The frame's lit part, from one point of the pupil, by the light's mirror image. */
function litFlat(view: FrameView, normal: Vec, outline: readonly Vec[], pupil: Vec): Lit {
  const centre: Vec = [0, 0, view.pupilDistanceMm];
  const facing = cut(outline, (p) => dot(normal, p), between);
  const depth = dot(normal, pupil);
  const onFilm = facing.map((p) => {
    const behind = sub(p, scale(normal, 2 * dot(normal, p)));
    return between(pupil, behind, depth / (depth - dot(normal, behind)));
  });
  // Film beside or behind the pupil is in nobody's frame, and would project upside down.
  const ahead = cut(onFilm, (p) => centre[2] * 0.999 - p[2], between);
  const inFrame = ahead.map((p): Point2 => {
    const t = centre[2] / (centre[2] - p[2]);
    return [p[0] * t, p[1] * t];
  });
  return moments(cutToRectangle(inFrame, view.widthMm / 2, view.heightMm / 2));
}

/** A point of the frame, and where its ray meets the plane of the light. */
interface Sample {
  readonly at: Point2;
  readonly hit: Point2;
}

const mix = (a: Point2, b: Point2, t: number): Point2 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
];

const betweenSamples = (a: Sample, b: Sample, t: number): Sample => ({
  at: mix(a.at, b.at, t),
  hit: mix(a.hit, b.hit, t),
});

/** The face's edges, each as how far inside it a point lies. */
function edgesOf(face: Face): readonly ((sample: Sample) => number)[] {
  if (face.shape === 'round')
    return [({ hit }) => face.diameterMm / 2 - Math.hypot(hit[0], hit[1])];
  const [w, h] = [face.widthMm / 2, face.heightMm / 2];
  return [
    ({ hit }) => w - hit[0],
    ({ hit }) => w + hit[0],
    ({ hit }) => h - hit[1],
    ({ hit }) => h + hit[1],
  ];
}

const CELLS = 16;

/**
 * The same by rays, for a film without a mirror image of its own: one at each corner of a grid's
 * cells, and each cell cut where the light's edges run through it.
 */
function litByRays(view: FrameView, surface: FilmSurface, source: Source, pupil: Vec): Lit {
  const plane = planeOf(source);
  const centre: Vec = [0, 0, view.pupilDistanceMm];
  const edges = edgesOf(source.face);
  const sampleAt = (column: number, row: number): Sample | null => {
    const x = (column / CELLS - 0.5) * view.widthMm;
    const y = (row / CELLS - 0.5) * view.heightMm;
    const point = filmPoint(surface, [x, y, 0], centre);
    if (point === null) return null;
    const out = reflected(unit(sub(pupil, point.at)), point.normal);
    const hit = meetPlane(plane, point.at, out);
    return hit && { at: [x, y], hit };
  };
  const samples = Array.from({ length: (CELLS + 1) ** 2 }, (_, i) =>
    sampleAt(i % (CELLS + 1), Math.floor(i / (CELLS + 1))),
  );
  let [area, x, y] = [0, 0, 0];
  for (let row = 0; row < CELLS; row += 1)
    for (let column = 0; column < CELLS; column += 1) {
      const first = row * (CELLS + 1) + column;
      const cell = [first, first + 1, first + CELLS + 2, first + CELLS + 1];
      const corners = cell.map((i) => samples[i] ?? null).filter((corner) => corner !== null);
      if (corners.length < cell.length) continue;
      const lit = edges.reduce<readonly Sample[]>(
        (rest, inside) => cut(rest, inside, betweenSamples),
        corners,
      );
      const part = moments(lit.map((sample) => sample.at));
      area += part.area;
      x += part.x;
      y += part.y;
    }
  return { area, x, y };
}

/** Less black than this is rounding. */
const NOTHING = 1e-9;

/** Off the middle by less than this part of the half frame, black lies around. */
const MIDDLE = 0.1;

function sideOf(lostShare: number, x: number, y: number): FrameSide {
  if (lostShare <= NOTHING) return 'none';
  if (lostShare >= 1 - NOTHING) return 'all';
  if (Math.max(Math.abs(x), Math.abs(y)) < MIDDLE) return 'around';
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left';
  return y > 0 ? 'top' : 'bottom';
}

/**
 * What a light leaves dark of the frame.
 *
 * @throws RangeError where frame, distance or light have no extent
 */
export function coverage(view: FrameView, surface: FilmSurface, source: Source): Coverage {
  checkedFrame(view);
  const outline = sourceOutline(source);
  const lit = pupilRule(view)
    .map(({ at, weight }) => {
      const part =
        surface.curvaturePerMm === 0
          ? litFlat(view, surface.normal, outline, at)
          : litByRays(view, surface, source, at);
      return [part.area * weight, part.x * weight, part.y * weight] as Vec;
    })
    .reduce(add);
  const frame = view.widthMm * view.heightMm;
  const lost = frame - lit[0];
  const lostShare = lost <= NOTHING * frame ? 0 : Math.min(1, lost / frame);
  // The frame's own first moments are 0, so the loss's are those of the light with the sign turned.
  const x = -lit[1] / (lost * (view.widthMm / 2));
  const y = -lit[2] / (lost * (view.heightMm / 2));
  return { lostShare, side: sideOf(lostShare, x, y) };
}
