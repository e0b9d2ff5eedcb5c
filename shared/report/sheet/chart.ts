/** What charts share: legends that say what every line is, scales with few ticks, shaded stretches. */
import type { Attributes, Child, Element } from '../../api/drawing.ts';
import { label, line, polyline, rect, textWidth } from './canvas.ts';

/** How a line or an area looks, and so how the legend shows it. */
type Sample = 'curve' | 'curve-ends' | 'bound' | 'holds' | 'black' | 'span';

export interface Key {
  readonly sample: Sample;
  readonly text: string;
}

const ROW = 17;
const SAMPLE = 22;
const AFTER_SAMPLE = 5;
const BETWEEN = 14;

/** Samples with their words, in as many rows as they need; `height` is that of all rows. */
export function legend(
  keys: readonly Key[],
  left: number,
  top: number,
  right: number,
): { readonly shapes: readonly Child[]; readonly height: number } {
  const shapes: Child[] = [];
  let [x, row] = [left, 0];
  for (const { sample, text } of keys) {
    const width = SAMPLE + AFTER_SAMPLE + textWidth(text);
    if (x > left && x + width > right) [x, row] = [left, row + 1];
    const y = top + row * ROW;
    shapes.push(
      ...sampleOf(sample, x, y + 8),
      label(text, x + SAMPLE + AFTER_SAMPLE, y + 12, 'start', right - x - SAMPLE - AFTER_SAMPLE),
    );
    x += width + BETWEEN;
  }
  return { shapes, height: keys.length === 0 ? 0 : (row + 1) * ROW };
}

function sampleOf(sample: Sample, x: number, y: number): readonly Child[] {
  switch (sample) {
    case 'holds':
    case 'black':
      return [rect(sample, x, y - 5, SAMPLE, 10)];
    case 'span':
      return span(x, x + SAMPLE, y);
    default:
      return [line(sample, x, y, x + SAMPLE, y)];
  }
}

/** A stretch as a line between two ends. */
export const span = (from: number, to: number, y: number, more: Attributes = {}): Element[] => [
  line('edge', from, y, to, y, more),
  line('edge', from, y - 4, from, y + 4),
  line('edge', to, y - 4, to, y + 4),
];

/** A line through all that is known, with a gap where something isn't. */
export function curve(
  stroke: 'curve' | 'curve-ends',
  points: readonly (readonly [x: number, y: number] | null)[],
  more: Attributes = {},
): readonly Element[] {
  const runs: (readonly [number, number])[][] = [[]];
  for (const point of points) {
    if (point) runs.at(-1)!.push(point);
    else if (runs.at(-1)!.length > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1).map((run) => polyline(stroke, run, more));
}

/** Round numbers on a logarithmic scale, at most `most` of them and with even steps where it can. */
export function logTicks(
  from: number,
  to: number,
  most: number,
  series: readonly number[],
): readonly number[] {
  const inside = series.filter((n) => n >= from * 0.999 && n <= to * 1.001);
  const step = Math.ceil(inside.length / most);
  return inside.filter((_, index) => index % step === 0);
}

/** 1, 2, 5 times powers of ten, or powers alone where those are enough. */
export function roundTicks(from: number, to: number): readonly number[] {
  const series = (steps: readonly number[]): readonly number[] =>
    POWERS.flatMap((power) => steps.map((step) => Number((step * 10 ** power).toPrecision(3))));
  const tens = logTicks(from, to, MOST_TICKS, series([1]));
  return tens.length > 1 ? tens : logTicks(from, to, MOST_TICKS, series([1, 2, 5]));
}

const MOST_TICKS = 3;
/** Of millimetres: from a hundredth of a micrometre to a hundred kilometres. */
const POWERS = Array.from({ length: 14 }, (_, index) => index - 5);

/** Between two values by their logarithms: 0 at the first, 1 at the second. */
export const logShare = (value: number, from: number, to: number): number =>
  to > from ? Math.log(value / from) / Math.log(to / from) : 0.5;

/** The same of a linear scale. */
export const share = (value: number, from: number, to: number): number =>
  to > from ? (value - from) / (to - from) : 0.5;
