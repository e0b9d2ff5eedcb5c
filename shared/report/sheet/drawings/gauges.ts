/** Two windows: the tilts that a mirror-like subject can have, and a film's life around its take. */

import type { Drawing } from '../../../api/drawing.ts';
import { ifKnown } from '../../../plan/field.ts';
import { message } from '../../../words/message.ts';
import { label, line, MARGIN, rect, roundBelow, WIDTH } from '../canvas.ts';
import { type SaidShot, sureTilts, undrawn } from '../said.ts';

const LEFT = MARGIN + 4;
const ROOM = WIDTH - 2 * LEFT;
const TOP = 26;
const BAR = 20;

const degrees = (radians: number): number => (radians * 180) / Math.PI;

export function tiltDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { tiltWindow: window, greatestTiltByDepthRad: byDepth } = figures;
  const drawing = { id: 'tilt', title: message`Tilt window`, key: 'tilt' } as const;
  if (!window.known || !bench.tiltRad.known) return undrawn(drawing, [window, bench.tiltRad]);
  const { leastRad, greatestRad, openRad, byLight } = window.value;
  const tilt = bench.tiltRad.value;
  const isOpen = openRad > 0;
  const upper =
    byDepth.known && greatestRad < byDepth.value - 1e-9
      ? message`the light`
      : message`the depth of field`;
  const sure = sureTilts(shot);
  const words = [
    message`Tilt ${say.angle(tilt)}.`,
    isOpen
      ? sure
        ? message`Below ${sure.words[0]} the lens is reflected; above ${sure.words[1]} ${upper} may run out.`
        : message`Below ${say.angle(leastRad)} the lens is reflected; above ${say.angle(greatestRad)} ${upper} runs out.`
      : message`No tilt works: hiding the lens needs at least ${say.angle(leastRad)}, but ${upper} allows at most ${say.angle(greatestRad)}.`,
    byLight ? '' : message`The position of the light is unknown, so the window leaves it out.`,
  ];
  const most = Math.max(2, degrees(Math.max(leastRad, greatestRad, Math.abs(tilt))) * 1.25);
  const top = Math.min(90, most);
  const x = (deg: number): number => LEFT + (Math.min(deg, top) / top) * ROOM;
  const [least, greatest, at] = [leastRad, greatestRad, Math.abs(tilt)].map(degrees) as [
    number,
    number,
    number,
  ];
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: {
      height: 88,
      shapes: [
        rect('paper', LEFT, TOP, ROOM, BAR),
        ...(isOpen
          ? [
              rect(sure ? 'paper' : 'there', x(least), TOP, x(greatest) - x(least), BAR, {
                'data-window': 'tilt',
              }),
              ...(sure
                ? [
                    rect(
                      'there',
                      x(degrees(sure.leastRad)),
                      TOP,
                      x(degrees(sure.greatestRad)) - x(degrees(sure.leastRad)),
                      BAR,
                      { 'data-window': 'sure' },
                    ),
                  ]
                : []),
            ]
          : [
              rect('black', x(greatest), TOP, x(least) - x(greatest), BAR, {
                'data-window': 'shut',
              }),
            ]),
        ...ticks(top, x, (deg) => `${deg}°`),
        line('edge', x(at), TOP - 8, x(at), TOP + BAR + 8, { 'data-mark': 'tilt' }),
        label(message`set ${say.angle(tilt)}`, x(at), 14),
      ],
    },
  };
}

export function lifeDrawing({ bench, figures, say }: SaidShot): Drawing | null {
  const { lifeS: life, shareOfLife: share } = figures;
  const drawing = { id: 'life', title: message`Film lifetime`, key: 'take' } as const;
  if (!life.known || !share.known) return undrawn(drawing, [life, share]);
  const take = ifKnown(bench.fields.take);
  const settle = (take && ifKnown(take.settle)) ?? 0;
  const whole = share.value * life.value;
  const spare = life.value - whole;
  const words =
    spare >= 0
      ? message`Wait ${say.seconds(settle)}, then a take of ${say.seconds(whole - settle)}. It ends ${say.seconds(spare)} before the film usually bursts, at ${say.seconds(life.value)}.`
      : message`Wait ${say.seconds(settle)}, then a take of ${say.seconds(whole - settle)}. It ends ${say.seconds(-spare)} after the film usually bursts, at ${say.seconds(life.value)}.`;
  const top = Math.max(life.value, whole) * 1.02;
  const x = (s: number): number => LEFT + (s / top) * ROOM;
  return {
    ...drawing,
    words,
    picture: {
      height: 92,
      shapes: [
        rect('needed', x(0), TOP, x(settle) - x(0), BAR, { 'data-span': 'settle' }),
        rect('there', x(settle), TOP, x(whole) - x(settle), BAR, { 'data-span': 'take' }),
        ...(whole > life.value
          ? [
              rect('black', x(life.value), TOP, x(whole) - x(life.value), BAR, {
                'data-span': 'gone',
              }),
            ]
          : []),
        ...ticks(top, x, (s) => `${s} s`),
        line('edge', x(life.value), TOP - 8, x(life.value), TOP + BAR + 8, { 'data-mark': 'gone' }),
        label(message`film lasts ${say.seconds(life.value)}`, x(life.value), 14),
      ],
    },
  };
}

function ticks(top: number, x: (value: number) => number, said: (value: number) => string) {
  const step = roundBelow(top / 3);
  return Array.from({ length: Math.floor(top / step + 1e-9) + 1 }, (_, index) => {
    const value = Number((index * step).toPrecision(6));
    return [
      line('grid', x(value), TOP + BAR, x(value), TOP + BAR + 6),
      label(said(value), x(value), TOP + BAR + 22),
    ];
  }).flat();
}
