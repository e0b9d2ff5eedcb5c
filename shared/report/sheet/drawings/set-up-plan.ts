/** A set whose rig hangs over the subject, seen from above: along the lens axis. */
import type { Drawing } from '../../../api/drawing.ts';
import { circle, MARGIN, polygon, rect, scaleBar, WIDTH } from '../canvas.ts';
import { Labels, type Segment, spotsAround } from '../labels.ts';
import { faceCorners, type PlacedLight } from './set-up-scene.ts';

const MOST_HEIGHT = 200;
const TOP = 24;

type Point = readonly [x: number, y: number];

export function planPicture(
  [width, height]: readonly [number, number],
  rimMm: number,
  placed: readonly PlacedLight[],
): NonNullable<Drawing['picture']> {
  const faces = placed.map(({ name, source }) => ({
    name,
    corners: faceCorners(source).map(([x, y]): Point => [x, y]),
  }));
  const frame: readonly Point[] = [
    [-width / 2, -height / 2],
    [width / 2, height / 2],
  ];
  const spots = [
    ...faces.flatMap(({ corners }) => corners),
    ...frame,
    [-rimMm / 2, -rimMm / 2] as Point,
    [rimMm / 2, rimMm / 2] as Point,
  ];
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const perMm = Math.min((WIDTH - 2 * MARGIN - 8) / (right - left), MOST_HEIGHT / (high - low));
  const start = (WIDTH - (right - left) * perMm) / 2;
  const at = ([x, y]: Point): [number, number] => [
    start + (x - left) * perMm,
    TOP + (high - y) * perMm,
  ];
  const bottom = TOP + (high - low) * perMm;
  const [x, y] = at([-width / 2, height / 2]);
  const [middleX, middleY] = at([0, 0]);
  const radius = (rimMm / 2) * perMm;
  const names = new Labels([]);
  names.keepClear({
    left: middleX - radius,
    right: middleX + radius,
    top: middleY - radius,
    bottom: middleY + radius,
  });
  return {
    height: bottom + 44,
    mmPerUnit: 1 / perMm,
    shapes: [
      ...faces.map(({ name, corners }) => polygon('lamp', corners.map(at), { 'data-lamp': name })),
      circle('part', middleX, middleY, radius, { 'data-part': 'lens' }),
      rect('frame', x, y, width * perMm, height * perMm, { 'data-frame': 'true' }),
      ...faces.map(({ name, corners }) =>
        names.place(name, spotsAround(boundsOf(corners.map(at)))),
      ),
      ...scaleBar(1 / perMm, MARGIN, bottom + 30),
    ],
  };
}

/** A line from corner to corner of what holds all points. */
export const boundsOf = (points: readonly Point[]): Segment => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ];
};
