/**
 * Subject, lens and light in the plane of the tilt: from the side, or from above where the
 * subject is turned sideways. Rays run from the pupil over both edges of the frame and are thrown
 * back by a mirror-like subject: where they end, the light has to be.
 */

import type { Child, Drawing } from '../../../api/drawing.ts';
import { frontDiameter } from '../../../figures/assumed.ts';
import { sourceOf } from '../../../figures/light-source.ts';
import { isGloss } from '../../../figures/mirror-kind.ts';
import { natureOf } from '../../../figures/subject-kinds.ts';
import { filmPoint, filmSurface } from '../../../mirror/film-surface.ts';
import { meetPlane, onPlane, planeOf, type Source } from '../../../mirror/source.ts';
import { add, reflected, scale, sub, unit, type Vec } from '../../../mirror/vector.ts';
import { ifKnown } from '../../../plan/field.ts';
import { allOf } from '../../../words/listed.ts';
import { message } from '../../../words/message.ts';
import { label, line, MARGIN, measure, polygon, rect, scaleBar, WIDTH } from '../canvas.ts';
import { type SaidShot, settable, undrawn } from '../said.ts';

const MOST_HEIGHT = 165;
/** How much of the lens is drawn behind its rim, as a share of the distance in front of it. */
const SHOWN_LENS = 0.22;

type Side = 'level' | 'upright';
/** Along the axis toward the lens, and up (or to the right, from above); mm. */
type Spot = readonly [z: number, across: number];

const spotOf = (side: Side, [x, y, z]: Vec): Spot => [z, side === 'level' ? y : x];

interface Scene {
  readonly rim: readonly [Spot, Spot];
  readonly lensEnd: number;
  readonly subject: readonly Spot[];
  readonly rays: readonly (readonly Spot[])[];
  readonly thrown: readonly (readonly Spot[])[];
  readonly lamps: readonly { readonly name: string; readonly face: readonly [Spot, Spot] }[];
}

export function setUpDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { workingDistanceMm: room, fieldMm: field, trace } = figures;
  const isTurned = bench.tiltAxis === 'upright';
  const drawing = {
    id: 'set-up',
    title: isTurned
      ? message`Subject, lens and light from above`
      : message`Subject, lens and light from the side`,
    key: 'tilt',
  } as const;
  if (!bench.subject) return null;
  const rim = bench.lens ? frontDiameter(bench.lens) : null;
  if (!room.known || !field.known || !trace.known || !rim?.known)
    return undrawn(drawing, [room, field, trace, ...(rim ? [rim] : [])]);
  if (!Number.isFinite(room.value) || !(room.value > 0)) return null;
  const lights = bench.lights.known ? bench.lights.value : [];
  const placed = lights.flatMap((light) => {
    const source = sourceOf(light);
    return source.known ? [{ name: light.name, source: source.value }] : [];
  });
  const unplaced = lights.length - placed.length;
  const words = [
    message`Working distance ${say.length(room.value)}; front diameter ${say.length(rim.value)}.`,
    bench.tiltRad.known && bench.tiltRad.value !== 0
      ? isTurned
        ? message`The subject is turned ${say.angle(bench.tiltRad.value)}.`
        : ifKnown(bench.subject.fields.kind) === 'film'
          ? message`The film leans back ${say.angle(bench.tiltRad.value)}.`
          : message`The subject leans back ${say.angle(bench.tiltRad.value)}.`
      : message`The subject faces the lens.`,
    isGloss(bench) && message`Where lens and lights reflect is not calculated.`,
    ...placed.map(({ name, source }) => `\`${name}\`: ${placeWords(source, say)}.`),
    neededWords(shot),
    unplaced > 0 &&
      (unplaced === 1
        ? message`The position of one light is unknown.`
        : message`The positions of ${unplaced} lights are unknown.`),
  ];
  const scene = sceneOf(shot, room.value, rim.value, field.value, placed);
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: scene && picture(scene, room.value, say),
  };
}

export const placeWords = (
  { distanceMm, upRad, acrossRad }: Source,
  say: SaidShot['say'],
): string => allOf([message`${say.length(distanceMm)} away`, ...directions(upRad, acrossRad, say)]);

/** "12° up and 3° to the right"; "on the lens axis". */
function directionWords(upRad: number, acrossRad: number, say: SaidShot['say']): string {
  const words = directions(dropped(upRad), dropped(acrossRad), say);
  return words.length === 0 ? message`on the lens axis` : allOf(words);
}

/** Less than a tenth of a degree is none. */
const dropped = (radians: number): number => (Math.abs(radians) < 0.0017 ? 0 : radians);

const directions = (upRad: number, acrossRad: number, say: SaidShot['say']): readonly string[] => [
  ...(upRad === 0
    ? []
    : [`${say.angle(Math.abs(upRad))} ${upRad > 0 ? message`up` : message`down`}`]),
  ...(acrossRad === 0
    ? []
    : [
        acrossRad > 0
          ? message`${say.angle(Math.abs(acrossRad))} to the right`
          : message`${say.angle(Math.abs(acrossRad))} to the left`,
      ]),
];

/** Less of the frame than this nobody sees. */
const LEAST_DARK = 0.001;

const neededWords = (shot: SaidShot): string | null => {
  const { figures, say } = shot;
  const { neededLight: light, darkFrame } = figures;
  if (!light.known) return null;
  const { upRad, acrossRad, widthMm, heightMm } = light.value;
  const size = [widthMm, heightMm].map((mm) => settable(mm, shot, Math.ceil));
  const [width = '', height = ''] = size;
  const unit = height.replace(/^[\d.]+/, '');
  const sides = `${width.endsWith(unit) ? width.slice(0, width.length - unit.length) : width} × ${height}`;
  const place = directionWords(upRad, acrossRad, say);
  const covers = !darkFrame.known
    ? ''
    : darkFrame.value.share < LEAST_DARK
      ? message`; \`${darkFrame.value.light}\` covers it`
      : message`; \`${darkFrame.value.light}\` leaves part of the frame dark`;
  return message`Light needed: a lit area of at least ${sides}, centred ${place}${covers}.`;
};

function sceneOf(
  { bench, figures }: SaidShot,
  room: number,
  rimMm: number,
  [width, height]: readonly [number, number],
  placed: readonly { readonly name: string; readonly source: Source }[],
): Scene | null {
  const side = bench.tiltAxis;
  const along = side === 'level' ? height : width;
  if (!Number.isFinite(along)) return null;
  const trace = figures.trace.known ? figures.trace.value : null;
  const u = trace?.pupilDistanceMm ?? room;
  const pupil: Vec = [0, 0, u];
  const tilt = bench.tiltRad.known ? bench.tiltRad.value : 0;
  const surface = filmSurface(tilt, side);
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
    subject: subjectOf(bench, along, tilt, figures),
    rays: edges.map(({ at }) => inDrawing(spotOf(side, at), u, room * (1 + SHOWN_LENS))),
    thrown,
    lamps: placed.map(({ name, source }) => ({ name, face: faceOf(side, source) })),
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

function subjectOf(
  { subject, tiltAxis }: SaidShot['bench'],
  along: number,
  tilt: number,
  figures: SaidShot['figures'],
): readonly Spot[] {
  const { size, diameter, depth } = subject!.fields;
  const shape = natureOf(subject)?.shape;
  const across = ifKnown(diameter) ?? sizeAlong(ifKnown(size), tiltAxis) ?? along;
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
  const turned = (a: number, z: number): Spot => [z * cos - a * sin, a * cos + z * sin];
  const [half, deep] = [across / 2, thick / 2];
  return [turned(-half, deep), turned(half, deep), turned(half, -deep), turned(-half, -deep)];
}

const sizeAlong = (
  size: { readonly width: number; readonly height: number } | undefined,
  about: Side,
): number | undefined => size && (about === 'level' ? size.height : size.width);

function picture(scene: Scene, room: number, say: SaidShot['say']): Drawing['picture'] {
  const { rim, lensEnd, subject, rays, thrown, lamps } = scene;
  const spots = [
    ...rim,
    ...subject,
    ...thrown.flat(),
    ...lamps.flatMap(({ face }) => face),
    [lensEnd, 0] as Spot,
  ];
  const [zs, as] = [spots.map(([z]) => z), spots.map(([, a]) => a)];
  const [far, near] = [Math.min(...zs), Math.max(...zs)];
  const [low, high] = [Math.min(...as), Math.max(...as)];
  const perMm = Math.min((WIDTH - 2 * MARGIN - 8) / (near - far), MOST_HEIGHT / (high - low));
  const left = (WIDTH - (near - far) * perMm) / 2;
  const top = 22;
  const x = (z: number): number => left + (near - z) * perMm;
  const y = (a: number): number => top + (high - a) * perMm;
  const drawn = (points: readonly Spot[]) => points.map(([z, a]): [number, number] => [x(z), y(a)]);
  const bottom = y(low);
  const span = (stroke: 'ray' | 'thrown' | 'edge', [from, to]: readonly Spot[], more = {}): Child =>
    line(stroke, x(from![0]), y(from![1]), x(to![0]), y(to![1]), more);
  const rimHalf = (rim[1][1] - rim[0][1]) / 2;
  return {
    height: bottom + 58,
    mmPerUnit: 1 / perMm,
    shapes: [
      line('axis', x(near), y(0), x(far), y(0)),
      rect('part', x(lensEnd), y(rimHalf), (lensEnd - room) * perMm, 2 * rimHalf * perMm, {
        'data-part': 'lens',
      }),
      ...rays.map((ray) => span('ray', ray)),
      ...thrown.map((ray) => span('thrown', ray, { 'data-ray': 'thrown' })),
      polygon('subject', drawn(subject), { 'data-subject': 'true' }),
      ...lamps.flatMap(({ name, face }) => lampShapes(name, drawn(face))),
      ...measure(say.length(room), x(room), x(0), bottom + 14),
      ...scaleBar(1 / perMm, MARGIN, bottom + 50),
    ],
  };
}

function lampShapes(
  name: string,
  [a, b]: readonly (readonly [number, number])[],
): readonly Child[] {
  const [[x1, y1], [x2, y2]] = [a!, b!];
  return [
    line('edge', x1, y1, x2, y2, { class: 'lamp-face', 'data-lamp': name }),
    label(name, (x1 + x2) / 2, Math.max(12, Math.min(y1, y2) - 7)),
  ];
}
