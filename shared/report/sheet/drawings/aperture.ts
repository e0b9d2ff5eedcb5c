/**
 * One chart of the aperture: depth of field against what is needed, contrast in the middle and at
 * the ends of that depth, and the ISO needed, all over the marked f-number. Shaded is where the
 * shot's own rules find nothing.
 */
import type { Child, Drawing } from '../../../api/drawing.ts';
import { contrastAtEnds } from '../../../figures/best-contrast.ts';
import { unknownOf } from '../../../figures/figure.ts';
import {
  type ApertureSweep,
  type AtAperture,
  apertureSweep,
} from '../../../rules/aperture-sweep.ts';
import { depthThere } from '../../../rules/depth-short.ts';
import { USABLE_CONTRAST } from '../../../rules/diffraction-eats-detail.ts';
import { message } from '../../../words/message.ts';
import { el } from '../../markup.ts';
import { label, line, MARGIN, rect, WIDTH } from '../canvas.ts';
import { curve, type Key, legend, logShare, logTicks, roundTicks, share, span } from '../chart.ts';
import { type SaidShot, undrawn } from '../said.ts';
import { apertureWords, MET, stretchesOf } from './aperture-words.ts';

const LEFT = 52;
const ROOM = WIDTH - LEFT - MARGIN;
const RIGHT = LEFT + ROOM;
const HIGH = 62;
const GAP = 12;
/** Full stops as they are engraved. */
const ENGRAVED = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90];
/** Half a third of a stop: what is drawn beyond the ends of the lens. */
const BEYOND = 2 ** (1 / 6);
/** Full stops of ISO. */
const ISO_SERIES = Array.from({ length: 16 }, (_, stop) => 25 * 2 ** stop);

export function apertureDrawing(shot: SaidShot): Drawing | null {
  const { bench } = shot;
  const drawing = { id: 'aperture', title: message`Choice of aperture`, key: 'aperture' } as const;
  const sweep = apertureSweep(shot);
  if (!sweep) {
    const { marked, apertureRange } = bench;
    const unknown = [marked, apertureRange].filter((one) => !one.known);
    return undrawn(drawing, unknown.length > 0 ? unknown : [unknownOf([apertureRange])]);
  }
  const panels = panelsOf(shot, sweep);
  if (panels.length === 0) {
    const { usableDepthMm, contrast, isoNeeded } = shot.figures;
    return undrawn(drawing, [usableDepthMm, contrast, isoNeeded]);
  }
  const words = apertureWords(shot, sweep);
  return { ...drawing, words, ...pictured(shot, sweep, panels) };
}

/** One of the plots below each other. */
interface Panel {
  readonly id: 'depth' | 'contrast' | 'iso';
  readonly keys: readonly Key[];
  readonly ticks: readonly (readonly [value: number, text: string])[];
  /** 0 at the bottom of the plot, 1 at its top. */
  readonly up: (value: number) => number;
  readonly curves: readonly {
    readonly id: string;
    readonly stroke: 'curve' | 'curve-ends';
    readonly at: readonly (number | null)[];
  }[];
  readonly levels: readonly {
    readonly id: string;
    readonly stroke: 'curve-ends' | 'bound';
    readonly at: number;
  }[];
}

function panelsOf(shot: SaidShot, sweep: ApertureSweep): readonly Panel[] {
  const points = sweep.marks.map((mark) => sweep.at(mark));
  return [depthPanel(shot, points), contrastPanel(shot, points), isoPanel(shot, points)].filter(
    (panel) => panel !== null,
  );
}

const isDrawn = (value: number | null): value is number => value !== null;

function depthPanel({ figures, say }: SaidShot, points: readonly AtAperture[]): Panel | null {
  const there = points.map(({ figures }) => {
    const depth = depthThere(figures);
    return depth.known && depth.value > 0 && Number.isFinite(depth.value) ? depth.value : null;
  });
  const known = there.filter(isDrawn);
  if (known.length < 2) return null;
  const { needed } = figures.depthMm;
  const need = needed.known && needed.value > 0 ? needed.value : null;
  const [low, high] = spanned([...known, ...(need === null ? [] : [need])], 1.15);
  return {
    id: 'depth',
    keys: [
      { sample: 'curve', text: message`depth of field` },
      ...(need === null
        ? []
        : [{ sample: 'curve-ends', text: message`needed ${say.length(need)}` } as const]),
    ],
    ticks: roundTicks(low, high).map((mm) => [mm, say.length(mm)]),
    up: (mm) => logShare(mm, low, high),
    curves: [{ id: 'depth', stroke: 'curve', at: there }],
    levels: need === null ? [] : [{ id: 'needed', stroke: 'curve-ends', at: need }],
  };
}

/** The ends of a logarithmic scale that holds all of them. */
const spanned = (values: readonly number[], spare: number): readonly [number, number] => [
  Math.min(...values) / spare,
  Math.max(...values) * spare,
];

function contrastPanel({ figures, say }: SaidShot, points: readonly AtAperture[]): Panel | null {
  const middle = points.map(({ figures: { contrast } }) =>
    contrast.known ? contrast.value : null,
  );
  if (middle.filter(isDrawn).length < 2) return null;
  const { needed } = figures.depthMm;
  const ends = points.map(({ figures }) => contrastAtEnds(figures));
  const hasEnds = needed.known && needed.value > 0 && ends.filter(isDrawn).length > 1;
  return {
    id: 'contrast',
    keys: [
      { sample: 'curve', text: message`contrast in focus` },
      ...(hasEnds ? [{ sample: 'curve-ends', text: message`at the ends` } as const] : []),
      { sample: 'bound', text: message`limit ${say.percent(USABLE_CONTRAST)}` },
    ],
    ticks: [0, 0.5, 1].map((part) => [part, `${part * 100}%`]),
    up: (part) => share(Math.max(0, Math.min(1, part)), 0, 1),
    curves: [
      { id: 'middle', stroke: 'curve', at: middle },
      ...(hasEnds ? [{ id: 'ends', stroke: 'curve-ends', at: ends } as const] : []),
    ],
    levels: [{ id: 'usable', stroke: 'bound', at: USABLE_CONTRAST }],
  };
}

function isoPanel({ bench, say }: SaidShot, points: readonly AtAperture[]): Panel | null {
  const iso = points.map(({ figures: { isoNeeded } }) =>
    isoNeeded.known && isoNeeded.value > 0 ? isoNeeded.value : null,
  );
  const known = iso.filter(isDrawn);
  if (known.length < 2) return null;
  const set = bench.iso.known && bench.iso.value !== 'auto' ? bench.iso.value : null;
  const [low, high] = spanned(set === null ? known : [...known, set], 1.25);
  const { lowest, highest, cleanTo } = bench.isoLimits;
  const limits = [lowest, cleanTo, highest].flatMap((limit) =>
    limit.known && limit.value > low && limit.value < high ? [limit.value] : [],
  );
  const limitKeys = (
    [
      [lowest, (n: string) => message`lowest ISO ${n}`],
      [cleanTo, (n: string) => message`usable to ISO ${n}`],
      [highest, (n: string) => message`highest ISO ${n}`],
    ] as const
  ).flatMap(([limit, said]) =>
    limit.known && limits.includes(limit.value)
      ? [{ sample: 'bound', text: said(say.iso(limit.value)) } as const]
      : [],
  );
  return {
    id: 'iso',
    keys: [
      { sample: 'curve', text: message`ISO needed` },
      ...(set === null
        ? []
        : [{ sample: 'curve-ends', text: message`set ISO ${say.iso(set)}` } as const]),
      ...limitKeys,
    ],
    ticks: logTicks(low, high, 3, ISO_SERIES).map((value) => [value, String(value)]),
    up: (value) => logShare(value, low, high),
    curves: [{ id: 'iso', stroke: 'curve', at: iso }],
    levels: [
      ...(set === null ? [] : [{ id: 'set-iso', stroke: 'curve-ends', at: set } as const]),
      ...limits.map((at) => ({ id: 'iso-limit', stroke: 'bound', at }) as const),
    ],
  };
}

function pictured(
  { bench, say }: SaidShot,
  sweep: ApertureSweep,
  panels: readonly Panel[],
): Pick<Drawing, 'picture' | 'choices'> {
  const { from, to } = sweep.range;
  const set = bench.marked.known ? bench.marked.value : from;
  const [low, high] = [Math.min(from / BEYOND, set), Math.max(to * BEYOND, set)];
  const x = (n: number): number => LEFT + logShare(n, low, high) * ROOM;
  const { asSet, byAuto } = stretchesOf(sweep);
  const isFixed = bench.iso.known && bench.iso.value !== 'auto';
  const head = legend(
    [
      {
        sample: 'holds',
        text: asSet.length > 0 ? message`all limits met` : message`all limits met: nowhere`,
      },
      { sample: 'black', text: message`not on the lens` },
      ...(isFixed && byAuto.length > 0
        ? [{ sample: 'span', text: message`with the ISO changed to match` } as const]
        : []),
    ],
    LEFT,
    0,
    RIGHT,
  );
  const shapes: Child[] = [...head.shapes];
  let top = head.height + 4;
  shapes.push(label(message`set ${say.fNumber(set)}`, x(set), top + 12));
  top += 18;
  if (isFixed && byAuto.length > 0) {
    for (const stretch of byAuto)
      shapes.push(...span(x(stretch.from), x(stretch.to), top + 5, { 'data-stretch': 'by-iso' }));
    top += 14;
  }
  const first = top;
  for (const panel of panels) {
    const keys = legend(panel.keys, LEFT, top, RIGHT);
    top += keys.height + 3;
    shapes.push(
      ...keys.shapes,
      el('g', { 'data-panel': panel.id }, ...plot(panel, sweep, top, { x, set, asSet })),
    );
    top += HIGH + GAP;
  }
  top -= GAP;
  const marks = ENGRAVED.filter((n) => n >= from * 0.99 && n <= to * 1.01);
  for (const n of marks)
    shapes.push(line('grid', x(n), top, x(n), top + 5), label(String(n), x(n), top + 19));
  shapes.push(label(message`marked f-number`, LEFT + ROOM / 2, top + 37));
  return {
    picture: { height: top + 44, shapes },
    choices: {
      key: 'aperture',
      top: first,
      height: top + 24 - first,
      bands: bench.marksOnLens.map((mark, index, all) => {
        const [before, after] = [all[index - 1], all[index + 1]];
        return {
          text: `f/${mark}`,
          from: before === undefined ? x(from / BEYOND) : x(Math.sqrt(before * mark)),
          to: after === undefined ? x(to * BEYOND) : x(Math.sqrt(mark * after)),
          isSet: mark === set,
        };
      }),
    },
  };
}

interface Across {
  readonly x: (n: number) => number;
  readonly set: number;
  readonly asSet: ReturnType<typeof stretchesOf>['asSet'];
}

function plot(
  panel: Panel,
  sweep: ApertureSweep,
  top: number,
  { x, set, asSet }: Across,
): readonly Child[] {
  const { from, to } = sweep.range;
  const y = (value: number): number => top + (1 - panel.up(value)) * HIGH;
  const bottom = top + HIGH;
  const outside = [
    [LEFT, x(from)],
    [x(to), RIGHT],
  ] as const;
  return [
    ...asSet.map((stretch) =>
      rect('holds', x(stretch.from), top, Math.max(2, x(stretch.to) - x(stretch.from)), HIGH, {
        'data-stretch': MET,
        'data-from': String(stretch.from),
        'data-to': String(stretch.to),
      }),
    ),
    ...outside.map(([start, end]) =>
      rect('black', start, top, end - start, HIGH, { class: 'black off' }),
    ),
    ...panel.ticks.flatMap(([value, text]) => [
      line('grid', LEFT, y(value), RIGHT, y(value)),
      label(text, LEFT - 5, Math.max(top + 8, y(value) + 4), 'end'),
    ]),
    line('edge', x(set), top, x(set), bottom, { 'data-mark': 'aperture' }),
    ...panel.levels.map(({ id, stroke, at }) =>
      line(stroke, x(from), y(at), x(to), y(at), { 'data-level': id }),
    ),
    ...panel.curves.flatMap(({ id, stroke, at }) =>
      curve(
        stroke,
        at.map((value, index) => (value === null ? null : [x(sweep.marks[index]!), y(value)])),
        { 'data-curve': id },
      ),
    ),
  ];
}
