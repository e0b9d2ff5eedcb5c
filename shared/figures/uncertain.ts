/**
 * How sure the figures of a shot are. Each width is moved alone to its two ends and the figure is
 * worked out again; then all widths that move it are put together to the ends that move it up, and
 * to those that move it down. A shared input moves everything that depends on it together, so what
 * cancels has no width. Nothing is worked out before somebody asks.
 */
import type { Bench } from './bench.ts';
import { changedBench } from './changed.ts';
import { figuresOf } from './compute.ts';
import type { Figure } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';
import { type Width, widthsOf } from './widths.ts';

/** How much of a figure's width one input makes, 0 to 1. */
interface Share {
  readonly width: Width;
  readonly share: number;
}

/** Between which values a figure lies; `widenedBy` has what moves it most first. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  readonly widenedBy: readonly Share[];
}

/** Where an input stands: at an end, or in its middle. */
export type End = -1 | 0 | 1;

/** Takes one number out of a shot's figures. */
type Pick = (figures: ShotFigures) => Figure<number>;

interface LaidOut {
  readonly bench: Bench;
  readonly figures: ShotFigures;
}

/** Less than this share of a figure's value is rounding. */
const ROUNDING = 1e-9;

export class UncertainShot {
  readonly middle: LaidOut;
  #widths: readonly Width[] | undefined;
  readonly #corners = new Map<string, LaidOut>();

  constructor(middle: LaidOut) {
    this.middle = middle;
  }

  get widths(): readonly Width[] {
    this.#widths ??= widthsOf(this.middle.bench);
    return this.#widths;
  }

  /** The shot with each width where `ends` says, in the order of `widths`. */
  at(ends: readonly End[]): LaidOut {
    if (ends.every((end) => end === 0)) return this.middle;
    const key = ends.join(' ');
    let corner = this.#corners.get(key);
    if (!corner) {
      const changes = this.widths.flatMap((width, index) => {
        const end = ends[index] ?? 0;
        return end === 0 ? [] : [end < 0 ? width.low : width.high];
      });
      const bench = changedBench(this.middle.bench, changes);
      corner = { bench, figures: figuresOf(bench) };
      this.#corners.set(key, corner);
    }
    return corner;
  }

  /** With one width alone at an end. */
  alone(index: number, end: End): LaidOut {
    return this.at(this.widths.map((_, at) => (at === index ? end : 0)));
  }

  /** The bounds of one figure; undefined: it has no width, or is not known. */
  bounds(pick: Pick): Bounds | undefined {
    const middle = pick(this.middle.figures);
    if (!middle.known) return undefined;
    const moves = this.widths.map((_, index) => this.#move(pick, middle.value, index));
    const moved = moves.filter((move) => move !== undefined);
    if (moved.length === 0) return undefined;
    const corner = (end: 'up' | 'down'): number => {
      const there = pick(this.at(moves.map((move) => move?.[end] ?? 0)).figures);
      return there.known ? there.value : middle.value;
    };
    const values = [middle.value, ...moved.flatMap(({ low, high }) => [low, high])];
    if (moved.length > 1) values.push(corner('up'), corner('down'));
    return {
      low: Math.min(...values),
      high: Math.max(...values),
      widenedBy: this.#shares(moves),
    };
  }

  /** What a width does to a figure alone; undefined: nothing. */
  #move(pick: Pick, middle: number, index: number): Move | undefined {
    const end = (at: End): number => {
      const there = pick(this.alone(index, at).figures);
      return there.known ? there.value : middle;
    };
    const [a, b] = [end(-1), end(1)];
    const low = Math.min(a, b, middle);
    const high = Math.max(a, b, middle);
    if (same(low, high)) return undefined;
    const endOf = (value: number): End => (value === middle ? 0 : value === a ? -1 : 1);
    return { low, high, up: endOf(high), down: endOf(low) };
  }

  #shares(moves: readonly (Move | undefined)[]): readonly Share[] {
    const spans = moves.map((move) => (move ? spanOf(move) : 0));
    const sum = spans.reduce((all, span) => all + span, 0);
    return spans
      .flatMap((span, index) =>
        span > 0 ? [{ width: this.widths[index]!, share: span / sum }] : [],
      )
      .sort((a, b) => b.share - a.share);
  }
}

interface Move {
  readonly low: number;
  readonly high: number;
  readonly up: End;
  readonly down: End;
}

const same = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b));

/** An endless end counts as wide, and not as all there is. */
const spanOf = ({ low, high }: Move): number =>
  Number.isFinite(high - low) ? high - low : Number.MAX_VALUE / 1e6;
