/**
 * The image of a lamp's face in a bubble. Judged by brute force: a ray from the middle of the entrance
 * pupil through every point of a fine grid in the plane of focus, to the sphere's near or far wall, thrown
 * back by the law of reflection (angle out equals angle in), and asked whether it meets the face.
 */
import { describe, expect, it } from 'vitest';
import {
  type BubbleView,
  type BubbleWall,
  imageOfOutline,
} from '../../shared/mirror/bubble-image.ts';
import { type Source, sourceOutline } from '../../shared/mirror/source.ts';

type V = readonly [number, number, number];
const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (from: V, way: V, far: number): V => [
  from[0] + way[0] * far,
  from[1] + way[1] * far,
  from[2] + way[2] * far,
];
const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** Where on the lamp's face the wall throws the ray through this point of the frame, in its half sizes. */
function onFace(
  view: BubbleView,
  source: Source,
  wall: BubbleWall,
  [x, y]: readonly [number, number],
): readonly [number, number] | null {
  const { radiusMm: r, pupilFromCentreMm: e, focusFromCentreMm } = view;
  const toFocus: V = [x, y, focusFromCentreMm - e];
  const length = Math.hypot(...toFocus);
  const way = toFocus.map((part) => part / length) as unknown as V;
  const pupil: V = [0, 0, e];
  const half = dot(pupil, way);
  const root = half * half - (e * e - r * r);
  if (root < 0) return null;
  const hit = along(pupil, way, -half + (wall === 'front' ? -1 : 1) * Math.sqrt(root));
  const normal = hit.map((part) => part / r) as unknown as V;
  const back = along(way, normal, -2 * dot(way, normal));
  const { face, distanceMm, upRad: up, acrossRad: across } = source;
  if (face.shape !== 'rectangle') throw new Error('a rectangle');
  const out: V = [Math.cos(up) * Math.sin(across), Math.sin(up), Math.cos(up) * Math.cos(across)];
  const reach = (distanceMm - dot(hit, out)) / dot(back, out);
  if (!(reach > 0)) return null;
  const met = along(hit, back, reach);
  const right: V = [Math.cos(across), 0, -Math.sin(across)];
  const upward: V = [
    -Math.sin(up) * Math.sin(across),
    Math.cos(up),
    -Math.sin(up) * Math.cos(across),
  ];
  return [(2 * dot(met, right)) / face.widthMm, (2 * dot(met, upward)) / face.heightMm];
}

/** The box around all points of the frame that show the face, mm: [left, right, bottom, top]. */
function tracedBox(view: BubbleView, source: Source, wall: BubbleWall, around: readonly number[]) {
  const steps = 400;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  const [fromX, toX, fromY, toY] = around as [number, number, number, number];
  for (let i = 0; i <= steps; i++)
    for (let j = 0; j <= steps; j++) {
      const at = [
        fromX + ((toX - fromX) * i) / steps,
        fromY + ((toY - fromY) * j) / steps,
      ] as const;
      const face = onFace(view, source, wall, at);
      if (!face || Math.abs(face[0]) > 1 || Math.abs(face[1]) > 1) continue;
      left = Math.min(left, at[0]);
      right = Math.max(right, at[0]);
      bottom = Math.min(bottom, at[1]);
      top = Math.max(top, at[1]);
    }
  return {
    xMm: (left + right) / 2,
    yMm: (bottom + top) / 2,
    wide: right - left,
    high: top - bottom,
  };
}

const VIEW: BubbleView = {
  radiusMm: 30,
  pupilFromCentreMm: 430,
  focusFromCentreMm: 20,
  pupilMm: 6,
  pixelsPerMm: 20,
};

const panel = (
  widthMm: number,
  heightMm: number,
  distanceMm: number,
  up: number,
  across: number,
) => ({
  face: { shape: 'rectangle', widthMm, heightMm } as const,
  distanceMm,
  upRad: rad(up),
  acrossRad: rad(across),
});

// Brute force: a ray through every point of a fine grid, as described above.
describe('the image of a lamp in a bubble', () => {
  it.each([
    ['a softbox above and aside', panel(600, 400, 550, 50, -20)],
    ['a large sheet near by', panel(800, 600, 400, 40, 0)],
    ['a strip', panel(900, 80, 350, 35, 15)],
    ['a small panel', panel(60, 40, 500, 30, -40)],
  ])('%s is as large as rays show it, to 1 %', (_, source) => {
    for (const wall of ['front', 'rear'] as const) {
      const image = imageOfOutline(VIEW, sourceOutline(source), wall)!;
      const [x, y, wide, high] = [image.xPx, image.yPx, image.widthPx, image.heightPx].map(
        (pixels) => pixels / VIEW.pixelsPerMm,
      ) as [number, number, number, number];
      const around = [x - wide * 0.6, x + wide * 0.6, y - high * 0.6, y + high * 0.6];
      const traced = tracedBox(VIEW, source, wall, around);
      expect(Math.abs(wide / traced.wide - 1)).toBeLessThan(0.01);
      expect(Math.abs(high / traced.high - 1)).toBeLessThan(0.01);
      expect(Math.abs(x - traced.xMm)).toBeLessThan(0.01 * traced.wide);
      expect(Math.abs(y - traced.yMm)).toBeLessThan(0.01 * traced.high);
    }
  });
});
