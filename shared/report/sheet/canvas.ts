/**
 * What drawings are made of. One language for all of them: what is there is a full tone, what is
 * needed is hatched, light runs in dashes, black is crossed. Tones differ in lightness and in
 * pattern as well as in hue, so that a copier and a colour-blind eye tell them apart.
 */
import type { Attributes, Element, Picture } from '../../api/drawing.ts';
import { el } from '../markup.ts';

/** Units across every drawing; its text is 12 units high. */
export const WIDTH = 360;
export const MARGIN = 10;

type Tone =
  | 'there'
  | 'needed'
  | 'black'
  | 'part'
  | 'paper'
  | 'subject'
  | 'lamp'
  | 'holds'
  | 'mark'
  | 'frame'
  | 'image'
  | 'image-rear';

type Stroke =
  | 'axis'
  | 'edge'
  | 'ray'
  | 'thrown'
  | 'limit'
  | 'curve'
  | 'curve-ends'
  | 'bound'
  | 'grid';

export const rect = (
  tone: Tone,
  x: number,
  y: number,
  width: number,
  height: number,
  more: Attributes = {},
): Element => el('rect', { class: tone, x, y, width, height, ...more });

export const line = (
  stroke: Stroke,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  more: Attributes = {},
): Element => el('line', { class: stroke, x1, y1, x2, y2, ...more });

export const circle = (tone: Tone, cx: number, cy: number, r: number, more: Attributes = {}) =>
  el('circle', { class: tone, cx, cy, r, ...more });

type Point = readonly [x: number, y: number];

const pointsText = (points: readonly Point[]): string =>
  points.map(([x, y]) => `${round(x)},${round(y)}`).join(' ');

const round = (value: number): number => Math.round(value * 100) / 100;

export const polygon = (tone: Tone, points: readonly Point[], more: Attributes = {}): Element =>
  el('polygon', { class: tone, points: pointsText(points), ...more });

export const polyline = (stroke: Stroke, points: readonly Point[], more: Attributes = {}) =>
  el('polyline', { class: stroke, points: pointsText(points), ...more });

type Anchor = 'start' | 'middle' | 'end';

/** Classes of labels; in their middle most of them are held. */
const ANCHORS = { start: 'from', middle: undefined, end: 'to' } as const;

/** Mean advance of a character of 12 units, in the wider ones of the usual sans-serifs. */
const ADVANCE = 7;

export const textWidth = (text: string): number => [...text].length * ADVANCE;

/** A label that is kept inside the drawing and cut where it is longer than `most`. */
export function label(
  text: string,
  x: number,
  y: number,
  anchor: Anchor = 'middle',
  most = WIDTH - 2 * MARGIN,
  across = WIDTH,
): Element {
  const shown = shortened(text, most);
  const width = textWidth(shown);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const left = Math.max(2, Math.min(across - 2 - width, x - before));
  return el('text', { x: left + before, y, class: ANCHORS[anchor] }, shown);
}

function shortened(text: string, most: number): string {
  const characters = [...text];
  const fit = Math.max(2, Math.floor(most / ADVANCE));
  return characters.length <= fit ? text : `${characters.slice(0, fit - 1).join('')}…`;
}

/** A bar of a round length with its length beside it, so that a print of any size can be measured. */
export function scaleBar(mmPerUnit: number, x: number, y: number): readonly Element[] {
  const mm = roundBelow(70 * mmPerUnit);
  const length = mm / mmPerUnit;
  const said = mm >= 1000 ? `${mm / 1000} m` : `${Number(mm.toPrecision(3))} mm`;
  return [
    line('edge', x, y, x + length, y, { 'data-scale-bar-mm': String(Number(mm.toPrecision(6))) }),
    line('edge', x, y - 3, x, y + 3),
    line('edge', x + length, y - 3, x + length, y + 3),
    label(said, x + length + 6, y + 4, 'start'),
  ];
}

/** The largest of 1, 2, 5 times a power of ten that is not above `most`. */
export function roundBelow(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  const step = [5, 2, 1].find((each) => each * power <= most * (1 + 1e-9)) ?? 1;
  return step * power;
}

/** A length between two marks with its measure over or under it. */
export const measure = (
  text: string,
  x1: number,
  x2: number,
  y: number,
  below = true,
): readonly Element[] => [
  line('limit', x1, y, x2, y),
  line('limit', x1, y - 3, x1, y + 3),
  line('limit', x2, y - 3, x2, y + 3),
  label(text, (x1 + x2) / 2, below ? y + 14 : y - 6),
];

/**
 * The picture as SVG, named by its title and described in words.
 *
 * @param describedBy id of what stands beside it and says them; else they are put into it
 */
export function svgOf(
  { width = WIDTH, height, mmPerUnit, isActualSize, shapes }: Picture,
  id: string,
  title: string,
  words: string,
  describedBy?: string,
): Element {
  return el(
    'svg',
    {
      viewBox: `0 0 ${width} ${Math.ceil(height)}`,
      role: 'img',
      'aria-labelledby': `${id}-title`,
      'aria-describedby': describedBy ?? `${id}-desc`,
      ...(mmPerUnit !== undefined && { 'data-mm-per-unit': String(mmPerUnit) }),
      ...(mmPerUnit !== undefined &&
        isActualSize && {
          class: 'actual',
          width: `${round(width * mmPerUnit)}mm`,
          height: `${round(Math.ceil(height) * mmPerUnit)}mm`,
        }),
    },
    el('title', { id: `${id}-title` }, title),
    describedBy === undefined && el('desc', { id: `${id}-desc` }, words.replaceAll('`', '')),
    ...shapes,
  );
}

/** The patterns that tones refer to, once for the whole page. */
export const patterns = (): Element =>
  el(
    'svg',
    { class: 'patterns', width: 0, height: 0, 'aria-hidden': 'true', focusable: 'false' },
    el(
      'defs',
      {},
      el(
        'pattern',
        { id: 'hatched', width: 7, height: 7, patternUnits: 'userSpaceOnUse' },
        el('path', { class: 'hatch', d: 'M-1 8 L8 -1 M-1 1 L1 -1 M6 8 L8 6' }),
      ),
      el(
        'pattern',
        { id: 'crossed', width: 6, height: 6, patternUnits: 'userSpaceOnUse' },
        el('path', { class: 'cross', d: 'M0 0 L6 6 M6 0 L0 6' }),
      ),
    ),
  );
