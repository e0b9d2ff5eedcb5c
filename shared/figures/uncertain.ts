/**
 * How sure the figures of a shot are. Each width is moved alone to its two ends and the figure is
 * worked out again; then all widths that move it are put together to where they move it up, and to
 * where they move it down. A shared input moves everything that depends on it together, so what
 * cancels has no width. Nothing is worked out before somebody asks.
 *
 * Where an end leaves a figure without a value (the rig can't frame the field then), its bounds
 * reach to the last place where it has one, and the input says that it may make it impossible.
 */
import type { Bench } from './bench.ts';
import { changedBench } from './changed.ts';
import { figuresOf } from './compute.ts';
import type { Figure } from './figure.ts';
import { keepsFrame } from './kept-frame.ts';
import { once } from './lazily.ts';
import type { ShotFigures } from './shot-figures.ts';
import { changeTo, isOfRig, type Width } from './width.ts';
import { widthsOf } from './widths.ts';

/** How much of a figure's width one input makes, 0 to 1. */
export interface Share {
  readonly width: Width;
  readonly share: number;
  /** At an end of it, with all else in the middle, the figure has no value: it may be impossible. */
  readonly mayBeImpossible?: true;
}

/** Between which values a figure lies; `widenedBy` has what moves it most first. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  readonly widenedBy: readonly Share[];
}

/** Where an input stands: at an end, or in its middle. */
export type End = -1 | 0 | 1;

/** How far each width is from its middle: -1 the low end, 1 the high one. */
export type Stands = readonly number[];

/** Takes one number out of a shot's figures. */
export type Pick = (figures: ShotFigures) => Figure<number>;

export interface LaidOut {
  readonly bench: Bench;
  readonly figures: ShotFigures;
}

/** Less than this share of a figure's value is rounding. */
const ROUNDING = 1e-9;

/** Halvings on the way to the last place where a figure has a value: to a thousandth of it. */
const HALVINGS = 10;

/** Of so many inputs between whose ends figures turn all ends are tried together: 16 corners. */
const MOST_TURNING = 4;

/** How often inputs are tried one after the other from where those before them left off. */
const MOST_ROUNDS = 4;

/** A figure with an input alone somewhere between its ends. */
interface Looked {
  readonly stand: number;
  readonly value: number;
}

/** A figure with all inputs where they stand; undefined: it has no value there. */
type ValueAt = (stands: readonly number[]) => number | undefined;

/** A value of a figure, and where its inputs stand for it. */
interface Found {
  readonly at: readonly number[];
  readonly value: number;
}

/** What an input does to a figure alone. */
interface Move {
  readonly low: Looked;
  readonly high: Looked;
  readonly mayBeImpossible: boolean;
}

/** A figure with its inputs at `base`, and what each of them does to it from there. */
interface View {
  readonly base: readonly number[];
  readonly value: number;
  readonly moves: readonly (Move | undefined)[];
}

export class UncertainShot {
  readonly middle: LaidOut;
  #widths: readonly Width[] | undefined;
  #keepsFrame: boolean | undefined;
  #grouped: ReadonlyMap<string, readonly number[]> | undefined;
  readonly #corners = new Map<string, LaidOut>();

  constructor(middle: LaidOut) {
    this.middle = middle;
  }

  get widths(): readonly Width[] {
    this.#widths ??= widthsOf(this.middle.bench);
    return this.#widths;
  }

  /** The widths between whose ends figures turn. */
  get #turning(): readonly number[] {
    return this.widths.flatMap(({ between }, index) => (between.length > 0 ? [index] : []));
  }

  /**
   * The shot with each width where `stands` says, in the order of `widths`; widths of one group no
   * farther than they lie together.
   *
   * @param stands from -1, the low end, over 0, the middle, to 1, the high end
   */
  at(wanted: readonly number[]): LaidOut {
    const stands = this.#together(wanted);
    const each = this.widths.map((width, index) => changeTo(width, stands[index] ?? 0));
    if (each.every((change) => change === undefined)) return this.middle;
    const key = each.map((change, index) => (change ? stands[index] : 0)).join(' ');
    let corner = this.#corners.get(key);
    if (!corner) {
      const changes = each.filter((change) => change !== undefined);
      corner = laidOut(changedBench(this.middle.bench, changes));
      this.#corners.set(key, corner);
    }
    return corner;
  }

  /** The stands with those of each group drawn in to where they are as likely as one alone at its end. */
  #together(stands: readonly number[]): readonly number[] {
    if (this.#groups.size === 0) return stands;
    const drawn = [...stands];
    for (const members of this.#groups.values()) {
      const length = Math.hypot(...members.map((index) => stands[index] ?? 0));
      if (length > 1) for (const index of members) drawn[index] = (stands[index] ?? 0) / length;
    }
    return drawn;
  }

  /** The places of the widths of each group. */
  get #groups(): ReadonlyMap<string, readonly number[]> {
    this.#grouped ??= groupsOf(this.widths);
    return this.#grouped;
  }

  /** With one width alone away from its middle. */
  alone(index: number, stand: number): LaidOut {
    return this.at(this.widths.map((_, at) => (at === index ? stand : 0)));
  }

  /** Whether the shot frames the same wherever its lens stands within what its bench leaves uncertain. */
  get keepsFrame(): boolean {
    this.#keepsFrame ??= keepsFrame(this.middle.bench, () =>
      this.widths.flatMap(({ low }, index) =>
        low.kind === 'lens-axis'
          ? ([-1, 1] as const).map((end) => this.alone(index, end).bench.reach)
          : [],
      ),
    );
    return this.#keepsFrame;
  }

  /** The bounds of one figure; undefined: it has no width, or is not known. */
  bounds(pick: Pick): Bounds | undefined {
    const view = this.#viewFrom(
      pick,
      this.widths.map(() => 0),
    );
    if (!view) return undefined;
    const views = [view, ...this.#elsewhere(pick, view)];
    const all = this.widths.map((_, index) => views.flatMap(({ moves }) => moves[index] ?? []));
    if (all.every((moves) => moves.length === 0)) return undefined;
    const values = views.flatMap((one) => this.#valuesIn(pick, one));
    return { low: Math.min(...values), high: Math.max(...values), widenedBy: this.#shares(all) };
  }

  /**
   * How all widths stand where each alone makes a figure least, and where it makes it greatest;
   * undefined: nothing moves it, or it is not known.
   */
  extremes(pick: Pick): { readonly least: Stands; readonly most: Stands } | undefined {
    const view = this.#viewFrom(
      pick,
      this.widths.map(() => 0),
    );
    if (!view || view.moves.every((move) => move === undefined)) return undefined;
    const at = (end: 'low' | 'high'): Stands =>
      this.#steepest(
        view.value,
        view.moves.map((move) => move?.[end]),
      ).map((looked) => looked?.stand ?? 0);
    return { least: at('low'), most: at('high') };
  }

  /** What each width does to a figure alone; undefined: the figure has no value there. */
  #viewFrom(pick: Pick, base: readonly number[], of = this.widths): View | undefined {
    const there = pick(this.at(base).figures);
    if (!there.known) return undefined;
    const moves = this.widths.map((width, index) =>
      of.includes(width) ? this.#move(pick, there.value, base, index) : undefined,
    );
    return { base, value: there.value, moves };
  }

  /**
   * The same seen from the other end of a width that hides what others do: while a lens keeps its
   * f-number up close, how near it focuses has no say in it; where its iris keeps its size, it has.
   */
  #elsewhere(pick: Pick, { base, moves }: View): readonly View[] {
    return this.widths.flatMap((width, index) => {
      if (!width.hides || !moves[index]) return [];
      const others = this.widths.filter((other) => other !== width && isOfRig(other));
      const view = this.#viewFrom(pick, stood(base, index, 1), others);
      if (!view) return [];
      // What is beside the rig moves the figure the same way from here.
      const all = view.moves.map((move, at) =>
        at === index || others.includes(this.widths[at]!) ? move : moves[at],
      );
      return { ...view, moves: all };
    });
  }

  #valuesIn(pick: Pick, { base, value, moves }: View): readonly number[] {
    const moved = moves.filter((move) => move !== undefined);
    const ends = [value, ...moved.flatMap(({ low, high }) => [low.value, high.value])];
    const turns = this.#turning.some((index) => moves[index]);
    if (moved.filter(isWide).length < 2 && !turns) return ends;
    const down = this.#steepest(
      value,
      moves.map((move) => move?.low),
    );
    const up = this.#steepest(
      value,
      moves.map((move) => move?.high),
    );
    return [...ends, ...this.#corner(pick, base, down, -1), ...this.#corner(pick, base, up, 1)];
  }

  /**
   * Where a group moves a figure most: of all the places that are as likely as one width alone at its
   * end, the one that lies in the direction of what each of them does.
   */
  #steepest(from: number, to: readonly (Looked | undefined)[]): readonly (Looked | undefined)[] {
    const all = [...to];
    for (const members of this.#groups.values()) {
      const steps = members.map((index) => Math.abs((to[index]?.value ?? from) - from));
      const length = Math.hypot(...steps);
      if (!(length > 0) || !Number.isFinite(length)) continue;
      for (const [at, index] of members.entries()) {
        const looked = to[index];
        if (looked) all[index] = { ...looked, stand: (looked.stand * steps[at]!) / length };
      }
    }
    return all;
  }

  /** What a width does to a figure alone; undefined: nothing. */
  #move(pick: Pick, from: number, base: readonly number[], index: number): Move | undefined {
    const look = (stand: number): Looked | undefined => {
      const there = pick(this.at(stood(base, index, stand)).figures);
      return there.known ? { stand, value: there.value } : undefined;
    };
    const ends = [look(-1), look(1)];
    const mayBeImpossible = ends.includes(undefined);
    const looked = [
      { stand: base[index]!, value: from },
      ...ends.map((end, side) => end ?? this.#last(look, side === 0 ? -1 : 1)),
      ...this.widths[index]!.between.map(look),
    ].filter((one) => one !== undefined);
    const low = looked.reduce((least, one) => (one.value < least.value ? one : least));
    const high = looked.reduce((most, one) => (one.value > most.value ? one : most));
    return same(low.value, high.value) && !mayBeImpossible
      ? undefined
      : { low, high, mayBeImpossible };
  }

  /** The last place toward an end where the figure has a value; undefined: it can't be approached. */
  #last(look: (stand: number) => Looked | undefined, end: End): Looked | undefined {
    let [known, unknown] = [0, 1];
    let last: Looked | undefined;
    for (let step = 0; step < HALVINGS; step++) {
      const half = (known + unknown) / 2;
      const there = look(end * half);
      if (there) [known, last] = [half, there];
      else unknown = half;
    }
    return last;
  }

  /**
   * The figure with all its inputs where each alone moves it one way. Where it has no value with
   * all of them there, those that move it most go first, and those that leave it none stay.
   */
  #corner(
    pick: Pick,
    base: readonly number[],
    to: readonly (Looked | undefined)[],
    way: -1 | 1,
  ): readonly number[] {
    const valueAt: ValueAt = (stands) => {
      const there = pick(this.at(stands).figures);
      return there.known ? there.value : undefined;
    };
    const stands = base.map((stand, index) => to[index]?.stand ?? stand);
    const whole = valueAt(stands);
    if (whole !== undefined) return [this.#turned(valueAt, stands, whole, way, to)];
    const order = to.flatMap((looked, index) => (looked ? [index] : []));
    order.sort((a, b) => way * ((to[b]?.value ?? 0) - (to[a]?.value ?? 0)));
    const found: number[] = [];
    let now = base;
    for (const index of order) {
      const next = stood(now, index, stands[index]!);
      const value = valueAt(next);
      if (value === undefined) continue;
      now = next;
      found.push(value);
    }
    return found;
  }

  /**
   * In a corner the inputs between whose ends figures turn may turn elsewhere than alone: where a
   * light goes by elevation and azimuth, one decides what the other does. Their ends are tried all.
   */
  #turned(
    valueAt: ValueAt,
    corner: readonly number[],
    value: number,
    way: -1 | 1,
    to: readonly (Looked | undefined)[],
  ): number {
    if (!this.#turning.some((index) => to[index])) return value;
    const stands = this.#turning
      .slice(0, MOST_TURNING)
      .reduce<readonly (readonly number[])[]>(
        (all, index) => all.flatMap((one) => [stood(one, index, -1), stood(one, index, 1)]),
        [corner],
      );
    const atMiddle = valueAt(this.widths.map(() => 0));
    const best = this.#best(valueAt, stands, way, { at: corner, value });
    // What is 0 in the middle hides what all else does to it: the dark part of a frame.
    return atMiddle === 0 ? this.#climbed(valueAt, best, way, to) : best.value;
  }

  /** The place among some where a figure is most, or least; `from` where none is better. */
  #best(valueAt: ValueAt, places: readonly (readonly number[])[], way: -1 | 1, from: Found): Found {
    return places.reduce((best, at) => {
      const value = valueAt(at);
      return value !== undefined && way * (value - best.value) > 0 ? { at, value } : best;
    }, from);
  }

  /**
   * One input after the other where it does most, again until none does more: what one does may show
   * only once another has moved. It starts again from the other end of each width that hides others.
   */
  #climbed(
    valueAt: ValueAt,
    from: Found,
    way: -1 | 1,
    to: readonly (Looked | undefined)[],
  ): number {
    const starts = [
      from,
      ...this.widths.flatMap(({ hides }, index) => {
        const at = stood(from.at, index, 1);
        const value = hides ? valueAt(at) : undefined;
        return value === undefined ? [] : [{ at, value }];
      }),
    ];
    const ends = starts.map((start) => {
      let best = start;
      for (let round = 0; round < MOST_ROUNDS; round++) {
        const before = best.value;
        for (const [index, { between }] of this.widths.entries()) {
          if (to[index] && between.length === 0) continue;
          const places = [-1, 1, ...between].map((place) => stood(best.at, index, place));
          best = this.#best(valueAt, places, way, best);
        }
        if (same(before, best.value)) break;
      }
      return best.value;
    });
    return way > 0 ? Math.max(...ends) : Math.min(...ends);
  }

  /** By the most that each of them does, wherever it is seen from. */
  #shares(all: readonly (readonly Move[])[]): readonly Share[] {
    const alone = all.map((moves) => Math.max(0, ...moves.filter(isWide).map(spanOf)));
    // What is uncertain together is one input.
    const first = (index: number): number =>
      this.#groups.get(this.widths[index]!.group ?? '')?.find((at) => all[at]!.length > 0) ?? index;
    const spans = alone.map((span, index) => {
      const members = this.#groups.get(this.widths[index]!.group ?? '');
      if (!members) return span;
      return first(index) === index ? Math.hypot(...members.map((at) => alone[at]!)) : 0;
    });
    const sum = spans.reduce((whole, span) => whole + span, 0);
    return all
      .flatMap((moves, index): Share[] => {
        if (moves.length === 0 || first(index) !== index) return [];
        const share = sum > 0 ? spans[index]! / sum : 0;
        const members = this.#groups.get(this.widths[index]!.group ?? '') ?? [index];
        const mayBeImpossible = members.some((at) => all[at]!.some((move) => move.mayBeImpossible));
        return [{ width: this.widths[index]!, share, ...(mayBeImpossible && { mayBeImpossible }) }];
      })
      .sort((a, b) => b.share - a.share);
  }
}

/** A bench with its figures, as soon as somebody asks for them. */
function laidOut(bench: Bench): LaidOut {
  const figures = once(() => figuresOf(bench));
  return {
    bench,
    get figures() {
      return figures();
    },
  };
}

function groupsOf(widths: readonly Width[]): ReadonlyMap<string, readonly number[]> {
  const groups = new Map<string, number[]>();
  for (const [index, { group }] of widths.entries())
    if (group !== undefined) groups.set(group, [...(groups.get(group) ?? []), index]);
  return groups;
}

/** The stands with one of them elsewhere. */
const stood = (stands: readonly number[], index: number, stand: number): readonly number[] =>
  stands.map((one, at) => (at === index ? stand : one));

const same = (a: number, b: number): boolean =>
  a === b || Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b));

const isWide = ({ low, high }: Move): boolean => !same(low.value, high.value);

/** An endless end counts as wide, and not as all there is. */
const spanOf = ({ low, high }: Move): number =>
  Number.isFinite(high.value - low.value) ? high.value - low.value : Number.MAX_VALUE / 1e6;
