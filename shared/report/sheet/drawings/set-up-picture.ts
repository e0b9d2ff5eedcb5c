/** A plane of the set as a picture, upright on the page or turned as an overhead rig hangs. */
import type { Child, Drawing } from '../../../api/drawing.ts';
import type { Say } from '../../../say/say.ts';
import {
  label,
  line,
  MARGIN,
  measure,
  polygon,
  rect,
  scaleBar,
  textWidth,
  WIDTH,
} from '../canvas.ts';
import { Labels, type Segment, spotsAround } from '../labels.ts';
import { boundsOf } from './set-up-plan.ts';
import type { Scene, Spot } from './set-up-scene.ts';

const MOST_HEIGHT = 165;
/** Of a rig that hangs over the subject. */
const MOST_HEIGHT_TURNED = 240;
/** Room for lamps' names over the picture. */
const TOP = 24;

type Point = readonly [x: number, y: number];

/** @param turnRad clockwise on the page, from the lens at the left; a quarter turn hangs it above */
export function scenePicture(
  scene: Scene,
  room: number,
  say: Say,
  turnRad: number,
): NonNullable<Drawing['picture']> {
  const { rim, lensEnd, subject, rays, thrown, lamps } = scene;
  const isTurned = turnRad !== 0;
  const [cos, sin] = isTurned ? [Math.cos(turnRad), Math.sin(turnRad)] : [1, 0];
  const onPage = ([z, a]: Spot): Point => [-z * cos + a * sin, -z * sin - a * cos];
  const half = Math.abs(rim[1][1] - rim[0][1]) / 2;
  const lens: readonly Spot[] = [
    [lensEnd, -half],
    [lensEnd, half],
    [room, half],
    [room, -half],
  ];
  const faces = lamps.flatMap(({ face, outline }) => outline ?? face);
  const spots = [...lens, ...subject, ...thrown.flat(), ...faces].map(onPage);
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [high, low] = [Math.min(...ys), Math.max(...ys)];
  const said = say.length(room);
  // Beside a hanging rig its distance is said at the left.
  const beside = isTurned ? textWidth(said) + 24 : 0;
  const across = WIDTH - 2 * MARGIN - 8 - beside;
  const tallest = isTurned ? MOST_HEIGHT_TURNED : MOST_HEIGHT;
  const perMm = Math.min(across / (right - left), tallest / (low - high));
  const start = beside + (WIDTH - beside - (right - left) * perMm) / 2;
  const at = (spot: Spot): [number, number] => {
    const [x, y] = onPage(spot);
    return [start + (x - left) * perMm, TOP + (y - high) * perMm];
  };
  const drawn = (points: readonly Spot[]) => points.map(at);
  const bottom = TOP + (low - high) * perMm;
  const segment = ([from, to]: readonly Spot[]): Segment => [at(from!), at(to!)];
  const outline = (points: readonly Spot[]): Segment[] =>
    points.map((from, index) => [at(from), at(points[(index + 1) % points.length]!)]);
  const axis: Segment = [at([lensEnd, 0]), at([0, 0])];
  const lines = [...rays.map(segment), ...thrown.map(segment)];
  const names = new Labels([
    ...lines,
    axis,
    ...outline(lens),
    ...outline(subject),
    ...lamps.map(({ face }) => segment(face)),
  ]);
  const aroundLamp = ({ face, outline }: Scene['lamps'][number]) =>
    spotsAround(outline ? boundsOf(outline.map(at)) : segment(face));
  const span = (stroke: 'ray' | 'thrown', ray: readonly Spot[], more = {}): Child =>
    line(stroke, ...flat(segment(ray)), more);
  return {
    height: bottom + (isTurned ? 44 : 58),
    mmPerUnit: 1 / perMm,
    shapes: [
      ...lamps.map(
        ({ name, outline }) => outline && polygon('lamp', drawn(outline), { 'data-lamp': name }),
      ),
      line('axis', ...flat(axis)),
      lensShape(drawn(lens), isTurned),
      ...rays.map((ray) => span('ray', ray)),
      ...thrown.map((ray) => span('thrown', ray, { 'data-ray': 'thrown' })),
      polygon('subject', drawn(subject), { 'data-subject': 'true' }),
      ...lamps.map(
        ({ name, face, outline }) =>
          outline === null &&
          line('edge', ...flat(segment(face)), { class: 'lamp-face', 'data-lamp': name }),
      ),
      ...lamps.map((lamp) => names.place(lamp.name, aroundLamp(lamp))),
      ...(isTurned
        ? hung(said, at([room, 0])[1], at([0, 0])[1])
        : measure(said, at([room, 0])[0], at([0, 0])[0], bottom + 14)),
      ...scaleBar(1 / perMm, MARGIN, bottom + (isTurned ? 30 : 50)),
    ],
  };
}

const flat = ([[x1, y1], [x2, y2]]: Segment): [number, number, number, number] => [x1, y1, x2, y2];

function lensShape(points: readonly [number, number][], isTurned: boolean): Child {
  const more = { 'data-part': 'lens' };
  if (isTurned) return polygon('part', points, more);
  const [[x, low], , [rim, high]] = points as [
    [number, number],
    [number, number],
    [number, number],
  ];
  const [top, bottom] = [Math.min(low, high), Math.max(low, high)];
  return rect('part', x, top, rim - x, bottom - top, more);
}

/** The distance from the lens down to the subject, at the left of the picture. */
const hung = (said: string, from: number, to: number): readonly Child[] => {
  const x = textWidth(said) + 16;
  return [
    line('limit', x, from, x, to),
    line('limit', x - 3, from, x + 3, from),
    line('limit', x - 3, to, x + 3, to),
    label(said, x - 6, (from + to) / 2 + 4, 'end'),
  ];
};
