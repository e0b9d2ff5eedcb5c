/** Labels that find a place of their own: on no other label, and on as few lines as can be. */
import type { Element } from '../../api/drawing.ts';
import { label, textWidth, WIDTH } from './canvas.ts';

type Point = readonly [x: number, y: number];
export type Segment = readonly [Point, Point];

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Of letters above and below their base line. */
const ASCENT = 10;
const DESCENT = 3;

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export class Labels {
  readonly #taken: Box[] = [];
  readonly #lines: readonly Segment[];

  /** @param lines what labels had better not lie on */
  constructor(lines: readonly Segment[]) {
    this.#lines = lines;
  }

  /** What is drawn otherwise, or a label whose place is fixed. */
  keepClear(box: Box): void {
    this.#taken.push(box);
  }

  /** At the first of the spots that is free; where none is, at the one that covers least. */
  place(text: string, spots: readonly Spot[]): Element {
    const costs = spots.map((spot) => this.#costOf(boxOf(text, spot)));
    const best = costs.indexOf(Math.min(...costs));
    const spot = spots[best]!;
    this.#taken.push(boxOf(text, spot));
    return label(text, spot.x, spot.y, spot.anchor);
  }

  #costOf(box: Box): number {
    const outside = box.top < 0 || box.left < 0 || box.right > WIDTH ? OUTSIDE : 0;
    const covered = this.#taken.filter((one) => meets(one, box)).length;
    const crossed = this.#lines.filter((one) => crosses(one, box)).length;
    return outside + covered * COVERS + crossed;
  }
}

const OUTSIDE = 1000;
const COVERS = 100;

/** Where a label comes to lie, kept inside the drawing as `label` keeps it. */
function boxOf(text: string, { x, y, anchor }: Spot): Box {
  const width = textWidth(text);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const left = Math.max(2, Math.min(WIDTH - 2 - width, x - before));
  return { left, top: y - ASCENT, right: left + width, bottom: y + DESCENT };
}

const meets = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a segment runs through a box: Liang and Barsky's clipping. */
function crosses([[x1, y1], [x2, y2]]: Segment, { left, top, right, bottom }: Box): boolean {
  let [from, to] = [0, 1];
  for (const [step, room] of [
    [x1 - x2, x1 - left],
    [x2 - x1, right - x1],
    [y1 - y2, y1 - top],
    [y2 - y1, bottom - y1],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
      continue;
    }
    const part = room / step;
    if (step < 0) from = Math.max(from, part);
    else to = Math.min(to, part);
  }
  return from < to;
}

/** Around a line: over it, under it, and on either side. */
export function spotsAround([[x1, y1], [x2, y2]]: Segment): readonly Spot[] {
  const [left, right] = [Math.min(x1, x2), Math.max(x1, x2)];
  const [top, bottom] = [Math.min(y1, y2), Math.max(y1, y2)];
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2 + 4];
  return [
    { x, y: top - 7, anchor: 'middle' },
    { x: right + 7, y, anchor: 'start' },
    { x: left - 7, y, anchor: 'end' },
    { x, y: bottom + 15, anchor: 'middle' },
    { x: right + 4, y: top - 7, anchor: 'start' },
    { x: left - 4, y: top - 7, anchor: 'end' },
    { x: right + 4, y: bottom + 15, anchor: 'start' },
    { x: left - 4, y: bottom + 15, anchor: 'end' },
  ];
}
