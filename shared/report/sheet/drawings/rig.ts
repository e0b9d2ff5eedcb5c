/** The rig from the side: its parts from the sensor plane on, the foot, and where it balances. */

import type { Drawing } from '../../../api/drawing.ts';
import { frontDiameter } from '../../../figures/assumed.ts';
import { derive, type Figure, figureOf, known } from '../../../figures/figure.ts';
import { allOf } from '../../../words/listed.ts';
import { message } from '../../../words/message.ts';
import { el } from '../../markup.ts';
import { circle, label, line, MARGIN, measure, polygon, rect, scaleBar, WIDTH } from '../canvas.ts';
import { notKnownWords, type SaidShot, undrawn } from '../said.ts';

/** No rim is drawn higher than this, however short the rig. */
const MOST_HEIGHT = 80;
/** Of a rig whose rim isn't known, as a share of its length. */
const ASSUMED_HEIGHT = 0.3;
/** Parts behind the lens are drawn this high against its rim: how thick they are nobody says. */
const BEHIND_LENS = { body: 1, tube: 0.72, converter: 0.8 } as const;
/** Foot and balance this near to each other are one. */
const SAME_MM = 0.5;

interface Box {
  readonly name: string;
  readonly kind: 'body' | 'tube' | 'converter' | 'lens' | 'close-up' | 'filter';
  readonly fromMm: number;
  readonly toMm: number;
}

export function rigDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  if (!bench.rig) return null;
  const drawing = { id: 'rig', title: message`Rig from the side`, key: 'rig' } as const;
  const boxes = boxesOf(shot);
  if (!boxes.known) return undrawn(drawing, [boxes]);
  const { massKg, centreOfGravityMm: centre, footMm: foot } = figures;
  const named = boxes.value.map(({ name }, index) => `${index + 1} \`${name}\``);
  const balance =
    centre.known && foot.known ? `, ${balanceWords(centre.value - foot.value, say)}` : '';
  const words = [
    message`From the sensor: ${allOf(named)}; ${say.length(boxes.value.at(-1)!.toMm)} to the front of the lens.`,
    massKg.known && `${say.kilograms(massKg.value)}.`,
    foot.known && message`Foot ${say.length(foot.value)} from the sensor plane.`,
    centre.known
      ? message`Centre of gravity ${say.length(centre.value)} from it${balance}.`
      : notKnownWords([centre], message`Centre of gravity`),
  ];
  return {
    ...drawing,
    words: words.filter((one) => one).join(' '),
    picture: picture(shot, boxes.value),
  };
}

const balanceWords = (aheadMm: number, say: SaidShot['say']): string => {
  if (Math.abs(aheadMm) < SAME_MM) return message`over the foot`;
  return aheadMm > 0
    ? message`${say.length(Math.abs(aheadMm))} ahead of the foot`
    : message`${say.length(Math.abs(aheadMm))} behind the foot`;
};

function boxesOf({ bench, figures }: SaidShot): Figure<readonly Box[]> {
  const { parts } = bench;
  if (!parts.known) return parts;
  const { rimFromSensorMm, frontMm } = figures.trace.known ? figures.trace.value : NOT_TRACED;
  const lensRimMm = (rimFromSensorMm ?? 0) - (frontMm ?? 0);
  const filters = filtersBefore(bench);
  const list = [
    ...parts.value.map(({ name, kind, lengthMm }) => ({ name, kind, lengthMm })),
    ...filters,
  ];
  return derive([known(list), ...list.map(({ lengthMm }) => lengthMm)], (named, ...lengths) => {
    let at = 0;
    return named.map(({ name, kind }, index) => {
      const fromMm = at;
      at += lengths[index]!;
      // A lens may stand longer than it is at infinity.
      if (kind === 'lens') at = Math.max(at, lensRimMm);
      return { name, kind, fromMm, toMm: at };
    });
  });
}

const NOT_TRACED = { rimFromSensorMm: undefined, frontMm: undefined };

/** Filters that say how long they are; others are as good as flat. */
const filtersBefore = ({ filters }: SaidShot['bench']) =>
  (filters.known ? filters.value : [])
    .filter(({ fields }) => fields.length.state === 'known')
    .map(({ name, fields }) => ({
      name,
      kind: 'filter' as const,
      lengthMm: figureOf<number>(fields.length, name),
    }));

function picture({ bench, figures, say }: SaidShot, boxes: readonly Box[]): Drawing['picture'] {
  const rim = bench.lens ? frontDiameter(bench.lens) : null;
  const marks = [figures.centreOfGravityMm, figures.footMm].flatMap((figure) =>
    figure.known ? [figure.value] : [],
  );
  const from = Math.min(0, ...marks);
  const to = Math.max(boxes.at(-1)!.toMm, ...marks);
  const rimMm = rim?.known ? rim.value : (to - from) * ASSUMED_HEIGHT;
  const perMm = Math.min((WIDTH - 2 * MARGIN - 12) / (to - from), MOST_HEIGHT / rimMm);
  const left = (WIDTH - (to - from) * perMm) / 2;
  const x = (mm: number): number => left + (mm - from) * perMm;
  const middle = 40 + MOST_HEIGHT / 2;
  const half = (kind: Box['kind']): number =>
    ((rimMm * perMm) / 2) * (kind in BEHIND_LENS ? BEHIND_LENS[kind as 'tube'] : 1);
  const parts = boxes.flatMap(({ kind, name, fromMm, toMm }, index) => {
    const width = Math.max(toMm - fromMm, 0.8 / perMm) * perMm;
    const high = half(kind);
    const centre = x(fromMm) + width / 2;
    return [
      rect(kind === 'tube' ? 'paper' : 'part', x(fromMm), middle - high, width, 2 * high, {
        'data-part': name,
        rx: kind === 'body' ? 3 : 0,
      }),
      label(String(index + 1), centre, middle - high - 5),
    ];
  });
  const base = middle + (rimMm * perMm) / 2;
  return {
    height: base + 74,
    mmPerUnit: 1 / perMm,
    shapes: [
      line('axis', MARGIN, middle, WIDTH - MARGIN, middle),
      ...parts,
      line('edge', x(0), middle - half('body') - 4, x(0), middle + half('body') + 4),
      ...(figures.footMm.known
        ? [
            polygon(
              'mark',
              [
                [x(figures.footMm.value), base + 2],
                [x(figures.footMm.value) - 9, base + 18],
                [x(figures.footMm.value) + 9, base + 18],
              ],
              { 'data-mark': 'foot' },
            ),
            ...measure(
              message`foot ${say.length(figures.footMm.value)}`,
              x(0),
              x(figures.footMm.value),
              base + 28,
            ),
          ]
        : []),
      ...(figures.centreOfGravityMm.known
        ? [
            ...balanceMark(x(figures.centreOfGravityMm.value), middle),
            label(
              message`centre of gravity ${say.length(figures.centreOfGravityMm.value)}`,
              x(figures.centreOfGravityMm.value),
              16,
            ),
            line(
              'limit',
              x(figures.centreOfGravityMm.value),
              20,
              x(figures.centreOfGravityMm.value),
              middle - 8,
            ),
          ]
        : []),
      ...scaleBar(1 / perMm, MARGIN, base + 66),
      label(message`lengths to scale`, WIDTH - MARGIN, base + 70, 'end'),
    ],
  };
}

/** A circle in quarters, two of them full: the usual mark of engineering drawings. */
const balanceMark = (cx: number, cy: number) => [
  circle('paper', cx, cy, 7, { 'data-mark': 'centre-of-gravity' }),
  el('path', {
    class: 'mark',
    d: `M${r(cx)} ${r(cy)} L${r(cx)} ${r(cy - 7)} A7 7 0 0 1 ${r(cx + 7)} ${r(cy)} Z M${r(cx)} ${r(cy)} L${r(cx)} ${r(cy + 7)} A7 7 0 0 1 ${r(cx - 7)} ${r(cy)} Z`,
  }),
];

const r = (value: number): string => value.toFixed(2);
