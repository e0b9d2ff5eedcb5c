/**
 * The least change at which none of some rules objects. Nothing of the grid is lost: settings are
 * tried from the least change on, and left out only where a rule has objected to all that they
 * share, or where they cost more than what was found. Light and tilt are not changed together:
 * what a mirror shows follows from both, and one of them is enough to turn.
 */
import type { Steps } from '../engine/steps.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { exposureOff } from '../rules/exposure-off.ts';
import { errorSpan, neededIsoSpan, type Span } from './balance.ts';
import {
  type Assignment,
  type Choices,
  type Cost,
  compareCosts,
  costOf,
  isAtLeast,
  isPresent,
  type LightChoice,
  presentOf,
  SETTINGS,
  sumOf,
} from './choice.ts';
import { isTolerated, type Judge, type Tolerated } from './judge.ts';
import type { Judged } from './judged.ts';
import { type SplitRules, splitRules } from './split-rules.ts';
import { TiltWindow } from './tilt-window.ts';

export interface Found {
  readonly assignment: Assignment;
  readonly cost: Cost;
}

interface Terms {
  /** Whether a solution will do for all else; left out: each does. */
  readonly isTaken?: (found: Found) => boolean;
  readonly tolerated?: Tolerated;
  /** The exposure is to be right: not even worth a word. */
  readonly isExposedRight?: boolean;
  /** Tilts outside the window too, where the rules' dead bands forgive it. */
  readonly isWide?: boolean;
  /** No more settings than these. */
  readonly mostSettings?: number;
  /** Whether enough was tried besides what the judge may ask: the search ends with what it has. */
  readonly isSpent?: () => boolean;
}

interface SplitTerms extends Omit<Required<Terms>, 'mostSettings' | 'isWide'> {
  readonly split: SplitRules;
  readonly span: Span | null;
}

const NOTHING: Tolerated = new Map();

type Geometry = Pick<Assignment, 'aperture' | 'tilt' | 'light'>;
type Timing = Pick<Assignment, 'shutter' | 'iso'>;

interface Costed<T> {
  readonly of: T;
  readonly cost: Cost;
}

interface CostedTiming extends Costed<Timing> {
  /** What it adds to the exposure, stops. */
  readonly adds: number;
}

const byCost = (a: Costed<unknown>, b: Costed<unknown>): number => compareCosts(a.cost, b.cost);

/** In units of effort, where all verdicts are known. */
const COST_OF_GEOMETRY = 0.3;

/** Nearer to a bound than this, stops, the rules themselves are asked. */
const NEAR = 1e-6;

export class Search {
  readonly #judge: Judge;
  readonly #present: Assignment;
  readonly #geometries: readonly Costed<Geometry>[];
  readonly #timings: readonly CostedTiming[];
  readonly #window: TiltWindow;
  readonly #isAuto: boolean;
  /** No light of the shot reaches the frame as it is set now: no exposure is there to be kept. */
  readonly #isBlack: boolean;
  /** By geometry, from one search to the next. */
  readonly #balance = new Map<Geometry, number | null>();
  readonly #lit = new Map<Geometry, number | null>();

  constructor(choices: Choices, judge: Judge) {
    this.#judge = judge;
    this.#present = presentOf(choices);
    this.#isAuto = this.#present.iso.value === 'auto';
    const { exposureErrorStops, shownLight } = judge.view(this.#present).figures;
    this.#isBlack = shownLight.exposureErrorStops.known && !exposureErrorStops.known;
    this.#geometries = geometriesOf(choices).sort(byCost);
    this.#timings = timingsOf(choices, this.#present).sort(byCost);
    this.#window = new TiltWindow(judge, this.#present);
  }

  /**
   * @param rules those that must not object
   * @returns null: none, or none within the judge's effort
   */
  *least(
    rules: readonly Judged[],
    {
      isTaken = () => true,
      tolerated = NOTHING,
      isExposedRight = false,
      isWide = false,
      mostSettings = SETTINGS.length,
      isSpent: isEnough = () => false,
    }: Terms = {},
  ): Steps<Found | null> {
    const isSpent = () => this.#judge.effort.isSpent() || isEnough();
    const split = splitRules(rules, this.#isAuto);
    const span = this.#spanOf(split, tolerated, isExposedRight);
    const isInside = this.#window.of(rules, isWide, tolerated);
    const timings = this.#timingsBy(split, tolerated);
    const terms = { split, span, isTaken, tolerated, isExposedRight, isSpent };
    let best: Found | null = null;
    let limit: Cost = { settings: mostSettings + 1, moved: 0 };
    for (const { of: geometry, cost: base } of this.#geometries) {
      if (compareCosts(base, limit) >= 0 || isSpent()) break;
      if (!isInside(geometry.aperture, geometry.tilt)) continue;
      yield;
      this.#judge.effort.spend(COST_OF_GEOMETRY);
      const at: Assignment = { ...this.#present, ...geometry };
      if (this.#objectsAny(split.plain, at, tolerated) || !this.#judge.staysKnown(at)) continue;
      best = (yield* this.#leastAt(geometry, base, timings(at.light), terms, limit)) ?? best;
      limit = best?.cost ?? limit;
    }
    return best;
  }

  *#leastAt(
    geometry: Geometry,
    base: Cost,
    timings: readonly CostedTiming[],
    terms: SplitTerms,
    limit: Cost,
  ): Steps<Found | null> {
    const { split, span, isTaken, tolerated } = terms;
    const at: Assignment = { ...this.#present, ...geometry };
    const start = span && !this.#isBlack ? this.#balanceAt(geometry, at) : null;
    let isPassed = false;
    let lit: number | null = null;
    for (const { of: timing, cost: own, adds } of timings) {
      // Most end here, a thousand a geometry: nothing is made for them.
      if (isAtLeast(base, own, limit) || terms.isSpent()) return null;
      if (start !== null && !this.#balances(start + adds, span!, terms, at, timing)) continue;
      // What costs most is asked last, once for all timings.
      if (!isPassed && this.#objectsAny(split.costly, at, tolerated)) return null;
      if (!isPassed && !this.#judge.keepsKnown(at)) return null;
      if (!isPassed && this.#isBlack && span) lit = this.#litAt(geometry, at);
      isPassed = true;
      if (lit !== null && !this.#balances(lit + adds, span!, terms, at, timing)) continue;
      const found = { assignment: { ...at, ...timing }, cost: sumOf(base, own) };
      if (isTaken(found)) return found;
      yield;
    }
    return null;
  }

  #objectsAny(rules: readonly Judged[], assignment: Assignment, tolerated: Tolerated): boolean {
    return rules.some((rule) => this.#judge.objects(rule, assignment, tolerated));
  }

  /** How far the exposure may be off, or what the body may choose; null: nobody asks. */
  #spanOf({ balance }: SplitRules, tolerated: Tolerated, isExposedRight: boolean): Span | null {
    if (balance.length === 0) return null;
    const view = this.#judge.view(this.#present);
    const objects: Parameters<typeof errorSpan>[1] = (rule, seen) => {
      const verdict = this.#judge.of(rule, seen);
      if (verdict === null || isTolerated(verdict.finding, tolerated)) return false;
      return verdict.loud || (isExposedRight && rule === exposureOff);
    };
    return this.#isAuto ? neededIsoSpan(view, objects) : errorSpan(view, objects);
  }

  /** Error in stops, or log2 of the ISO needed, at the present timing; null where not known. */
  #balanceAt(geometry: Geometry, at: Assignment): number | null {
    const before = this.#balance.get(geometry);
    if (before !== undefined) return before;
    // As if the mirror showed the lights, which is asked last: a black frame objects by itself.
    const now = this.#balanceIn(this.#judge.view(at).figures.shownLight);
    this.#balance.set(geometry, now);
    return now;
  }

  #balanceIn({ exposureErrorStops, isoNeeded }: ShotFigures['shownLight']): number | null {
    const figure = this.#isAuto ? isoNeeded : exposureErrorStops;
    if (!figure.known) return null;
    return this.#isAuto ? Math.log2(figure.value) : figure.value;
  }

  /** By the span where that is clear, by the rules where it is a matter of rounding. */
  #balances(
    value: number,
    span: Span,
    { split, tolerated, isExposedRight }: SplitTerms,
    at: Assignment,
    timing: Timing,
  ): boolean {
    if (isExposedRight && !this.#isAuto) return value >= span.from && value <= span.to;
    const isOut = value < span.from - NEAR || value > span.to + NEAR;
    if (isOut && !split.balance.some((rule) => this.#judge.isQuietable(rule))) return false;
    if (value > span.from + NEAR && value < span.to - NEAR) return true;
    return !this.#objectsAny(split.balance, { ...at, ...timing }, tolerated);
  }

  /** How far off the exposure is where what is black as it is set now is lit; null: it isn't. */
  #litAt(geometry: Geometry, at: Assignment): number | null {
    const before = this.#lit.get(geometry);
    if (before !== undefined) return before;
    const now = this.#balanceIn(this.#judge.view(at).figures);
    this.#lit.set(geometry, now);
    return now;
  }

  /** For each light the timings that no rule about them alone objects to. */
  #timingsBy(
    { timing }: SplitRules,
    tolerated: Tolerated,
  ): (light: LightChoice) => readonly CostedTiming[] {
    const known = new Map<LightChoice, readonly CostedTiming[]>();
    return (light) => {
      const before = known.get(light);
      if (before) return before;
      const now = this.#timings.filter(
        ({ of }) => !this.#objectsAny(timing, { ...this.#present, light, ...of }, tolerated),
      );
      known.set(light, now);
      return now;
    };
  }
}

function geometriesOf({ aperture, tilt, light }: Choices): Costed<Geometry>[] {
  const upright = tilt.filter(isPresent);
  const lit = light.filter(isPresent);
  const others = light.filter((one) => !isPresent(one));
  const pairs = [
    ...tilt.flatMap((angle) => lit.map((one) => [angle, one] as const)),
    ...others.flatMap((one) => upright.map((angle) => [angle, one] as const)),
  ];
  return aperture.flatMap((stop) =>
    pairs.map(([angle, one]) => ({
      of: { aperture: stop, tilt: angle, light: one },
      cost: costOf(stop, angle, one),
    })),
  );
}

function timingsOf({ shutter, iso }: Choices, present: Assignment): CostedTiming[] {
  const stops = (value: unknown, now: unknown): number =>
    typeof value === 'number' && typeof now === 'number' && value !== now
      ? Math.log2(value / now)
      : 0;
  return iso.flatMap((speed) =>
    shutter.map((time) => {
      const longer = stops(time.value, present.shutter.value);
      return {
        of: { shutter: time, iso: speed },
        cost: costOf(time, speed),
        // Of `auto` the ISO needed, which a longer time lessens.
        adds: speed.value === 'auto' ? -longer : longer + stops(speed.value, present.iso.value),
      };
    }),
  );
}
