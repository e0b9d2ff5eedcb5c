/** What a reader of a timeline finds at each frame of the edit. */

/** A frame of a clip, counted from the clip's first. */
export interface ShownFrame {
  /** Name of the file or take. */
  readonly clip: string;
  readonly frame: number;
}

export interface ShownAt {
  /** The cut's own picture, in a dissolve the incoming one; null: nothing. */
  readonly own: ShownFrame | null;
  /** The outgoing picture of a dissolve; undefined: there is none here. */
  readonly out?: ShownFrame | null;
}

export interface ReadDissolve {
  /** Frames of the edit: the first, and the first after it. */
  readonly from: number;
  readonly to: number;
  /** Name of the cut that comes in. */
  readonly into: string;
}

/** A stretch of a clip at one speed, as a program that renders it needs it. */
export interface Segment {
  readonly clip: string;
  /** Frames of the edit. */
  readonly from: number;
  readonly frames: number;
  /** Frames of the clip from its first to where it begins, and for each frame of the edit. */
  readonly place: number;
  readonly perFrame: number;
}

/** The frames from `from` to `to` of a segment; null: it has none of them. */
export function within(segment: Segment, from: number, to: number): Segment | null {
  const start = Math.max(segment.from, from);
  const frames = Math.min(segment.from + segment.frames, to) - start;
  const place = segment.place + segment.perFrame * (start - segment.from);
  return frames > 0 ? { ...segment, from: start, frames, place } : null;
}

export interface ReadTimeline {
  /** What is on where no dissolve is, in order; gaps are left out. */
  readonly segments: readonly Segment[];
  readonly frames: readonly ShownAt[];
  readonly dissolves: readonly ReadDissolve[];
}

/** Rational numbers of any size, for readers of their own. */
export class Ratio {
  constructor(
    readonly n: bigint,
    readonly d: bigint,
  ) {}

  static of(n: number | bigint, d: number | bigint = 1): Ratio {
    return new Ratio(BigInt(n), BigInt(d));
  }

  plus(other: Ratio): Ratio {
    return new Ratio(this.n * other.d + other.n * this.d, this.d * other.d);
  }

  minus(other: Ratio): Ratio {
    return this.plus(new Ratio(-other.n, other.d));
  }

  times(other: Ratio): Ratio {
    return new Ratio(this.n * other.n, this.d * other.d);
  }

  over(other: Ratio): Ratio {
    return new Ratio(this.n * other.d, this.d * other.n);
  }

  /** Negative, 0 or positive. */
  order(other: Ratio): number {
    const left = this.n * other.d * (this.d * other.d < 0n ? -1n : 1n);
    const right = other.n * this.d * (this.d * other.d < 0n ? -1n : 1n);
    return left < right ? -1 : left > right ? 1 : 0;
  }

  floor(): number {
    const [n, d] = this.d < 0n ? [-this.n, -this.d] : [this.n, this.d];
    return Number(n / d - (n % d < 0n ? 1n : 0n));
  }

  /** The number itself, where it is whole. */
  whole(): number {
    if (this.n % this.d !== 0n) throw new Error(`${this.n}/${this.d} is not whole`);
    return Number(this.n / this.d);
  }
}
