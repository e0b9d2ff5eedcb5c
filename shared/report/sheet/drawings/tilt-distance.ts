/**
 * Tilt against working distance: shaded is where the lens is out of the reflection and the depth
 * of field still covers the tilt.
 */
import type { Choices, Drawing } from '../../../api/drawing.ts';
import { type WindowAt, windowsByDistance } from '../../../figures/tilt-distances.ts';
import { message } from '../../../words/message.ts';
import { circle, label, line, MARGIN, polygon, rect, roundBelow, WIDTH } from '../canvas.ts';
import { curve, type Key, legend, share } from '../chart.ts';
import { type SaidShot, undrawn } from '../said.ts';

const LEFT = 62;
const ROOM = WIDTH - LEFT - MARGIN;
const RIGHT = LEFT + ROOM;
const HIGH = 130;
/** Tilts past this nobody sets. */
const MOST_DEGREES = 60;
/** Bands to click on are at most this many, and their steps are these. */
const MOST_BANDS = 32;
const BAND_STEPS = [0.1, 0.25, 0.5, 1, 2];

const degrees = (radians: number): number => (radians * 180) / Math.PI;

type Spot = readonly [deg: number, mm: number];

export function tiltDistanceDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { tiltWindow, workingDistanceMm: room } = figures;
  const drawing = {
    id: 'tilt-distance',
    title: message`Tilt and working distance`,
    key: 'tilt',
  } as const;
  if (!tiltWindow.known || !room.known || !bench.tiltRad.known)
    return undrawn(drawing, [tiltWindow, room, bench.tiltRad]);
  const windows = windowsByDistance(bench, figures);
  // A rig at the one end of its reach has one distance alone, which the tilt window shows.
  if (windows.length < 3) return null;
  const open = windows.filter(({ window }) => window.openRad > 0);
  const [nearest, farthest] = [windows[0]!, windows.at(-1)!];
  const at = (one: WindowAt): string =>
    message`${say.length(one.workingDistanceMm)} (frame ${say.length(one.fieldWidthMm)} wide)`;
  const words = [
    message`Working distances from ${at(nearest)} to ${at(farthest)}.`,
    open.length === 0
      ? message`At none of them a tilt hides the lens and keeps the depth of field.`
      : open.length === windows.length
        ? message`At all of them some tilts hide the lens and keep the depth of field.`
        : message`Some tilts hide the lens and keep the depth of field from ${at(open[0]!)} to ${at(open.at(-1)!)}.`,
    message`Set: ${say.angle(bench.tiltRad.value)} at ${say.length(room.value)}.`,
  ];
  return {
    ...drawing,
    words: words.join(' '),
    ...pictured(shot, windows, Math.abs(degrees(bench.tiltRad.value)), room.value),
  };
}

function pictured(
  { bench, say }: SaidShot,
  windows: readonly WindowAt[],
  tiltDeg: number,
  roomMm: number,
): Pick<Drawing, 'picture' | 'choices'> {
  const [near, far] = [windows[0]!.workingDistanceMm, windows.at(-1)!.workingDistanceMm];
  const least = windows.map(({ window }): number => degrees(window.leastRad));
  const greatest = windows.map(({ window }): number => degrees(window.greatestRad));
  const byDepth = windows.map(({ byDepthRad }): number => degrees(byDepthRad));
  const wanted = Math.max(2, tiltDeg, ...least, Math.min(...greatest)) * 1.3;
  const top = Math.min(MOST_DEGREES, wanted);
  const isLimitedByLight = greatest.some((deg, index) => deg < byDepth[index]! - 1e-6 && deg < top);
  const keys: readonly Key[] = [
    { sample: 'holds', text: message`tilts that work` },
    { sample: 'curve-ends', text: message`lens hidden from` },
    { sample: 'curve', text: message`depth of field up to` },
    ...(isLimitedByLight ? [{ sample: 'bound', text: message`light up to` } as const] : []),
  ];
  const head = legend(keys, LEFT, 0, RIGHT);
  const plotTop = head.height + 26;
  const bottom = plotTop + HIGH;
  const x = (deg: number): number => LEFT + (deg / top) * ROOM;
  const y = (mm: number): number => bottom - share(mm, near, far) * HIGH;
  const spots = (values: readonly number[]): readonly Spot[] =>
    values.map((deg, index) => [deg, windows[index]!.workingDistanceMm]);
  const drawn = (values: readonly number[]) =>
    clipped(spots(values), top).map((spot) => spot && ([x(spot[0]), y(spot[1])] as const));
  const steps = roundBelow((far - near) / 2);
  const rungs = Array.from({ length: 4 }, (_, index) => (Math.ceil(near / steps) + index) * steps);
  const degreeStep = roundBelow(top / 3);
  return {
    picture: {
      height: bottom + 44,
      shapes: [
        ...head.shapes,
        label(message`set ${say.angle((tiltDeg * Math.PI) / 180)}`, x(tiltDeg), plotTop - 9),
        rect('paper', LEFT, plotTop, ROOM, HIGH),
        ...openPieces(windows, top).map((piece) =>
          polygon(
            'holds',
            piece.map(([deg, mm]): [number, number] => [x(deg), y(mm)]),
            { 'data-window': 'by-distance' },
          ),
        ),
        ...rungs
          .filter((mm) => mm <= far)
          .flatMap((mm) => [
            line('grid', LEFT, y(mm), RIGHT, y(mm)),
            label(say.length(mm), LEFT - 5, Math.max(plotTop + 8, y(mm) + 4), 'end'),
          ]),
        ...curve('curve', drawn(byDepth), { 'data-curve': 'depth' }),
        ...curve('curve-ends', drawn(least), { 'data-curve': 'lens' }),
        ...(isLimitedByLight
          ? pairs(drawn(greatest)).map(([[x1, y1], [x2, y2]]) => line('bound', x1, y1, x2, y2))
          : []),
        line('edge', x(tiltDeg), plotTop, x(tiltDeg), bottom, { 'data-mark': 'tilt' }),
        circle('mark', x(tiltDeg), y(roomMm), 4, { 'data-mark': 'set' }),
        ...Array.from({ length: Math.floor(top / degreeStep + 1e-9) + 1 }, (_, index) => {
          const deg = Number((index * degreeStep).toPrecision(6));
          return [
            line('grid', x(deg), bottom, x(deg), bottom + 5),
            label(`${deg}°`, x(deg), bottom + 19),
          ];
        }).flat(),
        label(message`across: tilt; up: working distance`, LEFT + ROOM / 2, bottom + 37),
      ],
    },
    choices: choicesOf(tiltDeg, bench.tiltRad.known && bench.tiltRad.value < 0, top, {
      x,
      top: plotTop,
      height: HIGH,
    }),
  };
}

function choicesOf(
  tiltDeg: number,
  isNegative: boolean,
  most: number,
  {
    x,
    top,
    height,
  }: { readonly x: (deg: number) => number; readonly top: number; readonly height: number },
): Choices {
  const step = BAND_STEPS.find((one) => most / one <= MOST_BANDS) ?? BAND_STEPS.at(-1)!;
  return {
    key: 'tilt',
    top,
    height,
    bands: Array.from({ length: Math.floor(most / step) + 1 }, (_, index) => {
      const deg = Number((index * step).toPrecision(6));
      return {
        text: `${isNegative && deg > 0 ? '-' : ''}${deg} deg`,
        from: x(Math.max(0, deg - step / 2)),
        to: x(Math.min(most, deg + step / 2)),
        isSet: Math.abs(deg - tiltDeg) < 1e-6,
      };
    }),
  };
}

/** A curve up to where it leaves the plot; null: outside. */
function clipped(spots: readonly Spot[], top: number): readonly (Spot | null)[] {
  return spots.flatMap((spot, index): (Spot | null)[] => {
    if (spot[0] <= top) return [spot];
    const [before, after] = [spots[index - 1], spots[index + 1]];
    const edge = (inside: Spot | undefined): Spot[] =>
      inside && inside[0] <= top
        ? [between(inside, spot, (top - inside[0]) / (spot[0] - inside[0]))]
        : [];
    return [...edge(before), null, ...edge(after)];
  });
}

const between = (a: Spot, b: Spot, part: number): Spot => [
  a[0] + (b[0] - a[0]) * part,
  a[1] + (b[1] - a[1]) * part,
];

/** The same along the edge of the plot, where a curve is outside of it. */
const bounded = (spots: readonly Spot[], top: number): Spot[] =>
  spots.flatMap((spot, index): Spot[] => {
    if (spot[0] <= top) return [spot];
    const edge = (inside: Spot | undefined): Spot[] =>
      inside && inside[0] < top
        ? [between(inside, spot, (top - inside[0]) / (spot[0] - inside[0]))]
        : [];
    return [...edge(spots[index - 1]), [top, spot[1]], ...edge(spots[index + 1])];
  });

const pairs = <T>(points: readonly (T | null)[]): readonly (readonly [T, T])[] =>
  points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from && to ? [[from, to] as const] : [];
  });

/** Pieces of the plot between the least and the greatest tilt, each as its outline. */
function openPieces(windows: readonly WindowAt[], top: number): readonly (readonly Spot[])[] {
  const pieces: { least: Spot[]; greatest: Spot[] }[] = [];
  const ends = windows.map(({ workingDistanceMm, window }) => ({
    least: [degrees(window.leastRad), workingDistanceMm] as Spot,
    greatest: [degrees(window.greatestRad), workingDistanceMm] as Spot,
    open: window.openRad,
  }));
  ends.forEach((here, index) => {
    const before = ends[index - 1];
    const isOpen = here.open > 0;
    const wasOpen = before !== undefined && before.open > 0;
    if (before && isOpen !== wasOpen) {
      // Where the two limits meet.
      const part = before.open / (before.open - here.open);
      const tip = between(before.least, here.least, part);
      if (isOpen) pieces.push({ least: [tip], greatest: [tip] });
      else pieces.at(-1)!.least.push(tip);
    }
    if (!isOpen) return;
    if (!before) pieces.push({ least: [], greatest: [] });
    pieces.at(-1)!.least.push(here.least);
    pieces.at(-1)!.greatest.push(here.greatest);
  });
  return pieces.map(({ least, greatest }) => [
    ...bounded(least, top),
    ...bounded(greatest, top).reverse(),
  ]);
}
