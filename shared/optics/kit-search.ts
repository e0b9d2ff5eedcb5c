import { arrangeChain, behindFilters, type Chain, converterLens } from './arrangement.ts';
import { type ChainTrace, traceChain } from './chain.ts';
import { lensClosestFocalMm } from './focal-length.ts';
import { placeTubes, type StillToPlace, sequences, subsets } from './kit-orders.ts';
import type {
  BodyPart,
  ChainPart,
  CloseUpPart,
  ConverterPart,
  LensPart,
  TubePart,
} from './parts.ts';
import { reach, ringFor } from './reach.ts';

/** What there is to put between a body and a lens, and before the lens; one piece of each. */
interface KitParts {
  readonly tubes: readonly TubePart[];
  readonly converters: readonly ConverterPart[];
  readonly closeUps: readonly CloseUpPart[];
}

/** A piece of the kit: `index` into its kind's list. */
export interface Piece {
  readonly kind: 'tube' | 'converter' | 'close-up';
  readonly index: number;
}

/** One way to put a rig together that reaches the magnification wanted. */
export interface Way {
  /** Between body and lens, from the sensor toward the subject. */
  readonly behind: readonly Piece[];
  /** On the lens's rim. */
  readonly before: readonly Piece[];
  readonly chain: Chain;
  readonly trace: ChainTrace;
}

export interface KitSearch {
  readonly body: BodyPart;
  readonly lens: LensPart;
  readonly kit: KitParts;
  /** m wanted, > 0. */
  readonly magnification: number;
  /** How far past an end of the reach still counts as reached, as a share of m. */
  readonly tolerance: number;
  /** Length of the filters before the lens, mm; left out: none. */
  readonly filtersMm?: number | undefined;
}

/** The ways that were found, and whether every one was looked at that there is. */
interface Ways {
  readonly ways: readonly Way[];
  readonly complete: boolean;
}

/**
 * All subsets and orders of a kit that reach a magnification with room before the lens, fewest parts
 * first, with equally many the least light lost first. Tubes next to each other are not told apart by
 * their order, nor are pieces that are alike. Looked for up to one part more than the fewest, a number
 * of parts at a time, so that no way with fewer is left out; what only adds parts to a way is left out.
 *
 * With (b, d) height and slope at the lens's datum of the axial ray of slope 1 from the sensor,
 * m = b/f + d·m0 without a close-up lens. Every converter and every length adds to b and d, each
 * length linearly. So what the tubes that are still to be placed can add is bounded from both sides, and
 * a beginning that can't lead to the magnification is left at once; bounds that hold at any setting of
 * the ring strike out nearly everything before the exact reach is asked. What is left of a very large kit
 * is searched as far as `SEARCH_STEPS` go. Source: ray-transfer matrices as in ray-matrix.ts.
 */
export function waysToReach(search: KitSearch, most: number): Ways {
  const kit = {
    tubes: search.kit.tubes.slice(0, MOST_OF_A_KIND),
    converters: search.kit.converters.slice(0, MOST_OF_A_KIND),
    closeUps: search.kit.closeUps.slice(0, MOST_OF_A_KIND),
  };
  const whole = piecesIn(kit);
  const effort = new Effort();
  const found: Way[] = [];
  for (let count = 0, last = Math.min(whole, MOST_PIECES); count <= last; count++) {
    if (found.length >= most || effort.isSpent) break;
    const ways = waysWith(count, { ...search, kit }, ENOUGH, effort).sort(leastLossFirst);
    // More parts than one over the fewest are no remedy that anybody looks for.
    if (found.length === 0 && ways.length > 0) last = Math.min(last, count + 1);
    found.push(...ways.filter((way) => !found.some((other) => adds(way, other))));
  }
  return {
    ways: found.slice(0, most),
    complete: !effort.isSpent && whole === piecesIn(search.kit),
  };
}

const piecesIn = ({ tubes, converters, closeUps }: KitParts): number =>
  tubes.length + converters.length + closeUps.length;

/** Nobody stacks more between body and subject. */
const MOST_PIECES = 16;

/** Of a kind so many pieces are looked at, the first of the plan. */
const MOST_OF_A_KIND = 200;

/** Beginnings that are looked at before a search ends with what it has. */
const SEARCH_STEPS = 40_000;

/** The exact reach of a rig costs as much as so many bounds. */
const STEPS_OF_EXACT = 40;

/** What a search may still cost. Counted, not timed, so that the same plan has the same answer anywhere. */
class Effort {
  #left = SEARCH_STEPS;

  get isSpent(): boolean {
    return this.#left <= 0;
  }

  spend(steps: number): void {
    this.#left -= steps;
  }
}

/** So many ways of one number of parts are compared with each other; the rest is as good. */
const ENOUGH = 64;

/** Less of a stop than this is no reason for another part. */
const WORTH_STOPS = 1 / 3;

/** Whether a way is another one with parts added that gain nothing. */
function adds(way: Way, other: Way): boolean {
  const key = ({ kind, index }: Piece) => `${kind} ${index}`;
  const has = new Set([...way.behind, ...way.before].map(key));
  const parts = [...other.behind, ...other.before];
  return (
    parts.length < has.size &&
    parts.every((piece) => has.has(key(piece))) &&
    way.trace.lightLossStops > other.trace.lightLossStops - WORTH_STOPS
  );
}

const leastLossFirst = (a: Way, b: Way): number =>
  a.trace.lightLossStops - b.trace.lightLossStops ||
  (b.trace.workingDistanceMm ?? 0) - (a.trace.workingDistanceMm ?? 0);

/** Every way of exactly so many pieces, or as many ways as are enough or as the effort allows. */
export function waysWith(
  count: number,
  search: KitSearch,
  enough = Number.POSITIVE_INFINITY,
  effort = new Effort(),
): Way[] {
  const { kit } = search;
  const limits = lensLimits(search);
  const ways: Way[] = [];
  const isOver = (): boolean => ways.length >= enough || effort.isSpent;
  for (const before of subsets(kit.closeUps, count))
    for (const converters of sequences(kit.converters, count - before.length)) {
      if (isOver()) return ways;
      const left = count - before.length - converters.length;
      if (left > kit.tubes.length) {
        effort.spend(1);
        continue;
      }
      const perMm = before.reduce((sum, index) => sum + kit.closeUps[index]!.powerDpt / 1000, 0);
      const firstGap = firstGapFor(kit, converters);
      placeTubes(
        kit.tubes,
        { gapCount: converters.length + 1, firstGap, count: left },
        (lengths, still) => {
          if (isOver()) return false;
          effort.spend(1);
          const rays = raysBehind(kit, converters, lengths, firstGap, still);
          return mayReach(rays, perMm, limits, search);
        },
        (gaps) => {
          effort.spend(STEPS_OF_EXACT);
          const way = exactly(arranged(converters, gaps), before, search);
          if (way) ways.push(way);
        },
      );
    }
  return ways;
}

/** The first gap that may hold tubes: behind a converter whose length isn't known none may stand. */
const firstGapFor = ({ converters }: KitParts, order: readonly number[]): number =>
  order.findLastIndex((index) => converters[index]!.lengthMm === undefined) + 1;

interface LensLimits {
  readonly focal: readonly [least: number, most: number];
  /** Principal plane ahead of the datum, f·(1 + m0). */
  readonly principal: readonly [least: number, most: number];
  /** Rim ahead of the principal plane; NaN where length or flange isn't known. */
  readonly rim: readonly [least: number, most: number];
  readonly ring: number;
}

function lensLimits({ lens, body }: KitSearch): LensLimits {
  const ends = [lens.focalMm, lens.closest ? lensClosestFocalMm(lens) : lens.focalMm];
  const focal = [Math.min(...ends), Math.max(...ends)] as const;
  const ring = lens.closest?.magnification ?? 0;
  const principal = [focal[0], focal[1] * (1 + ring)] as const;
  const barrel = (body.flangeMm ?? Number.NaN) + (lens.lengthMm ?? Number.NaN);
  const gaps = [lens.gapMm ?? 0, (lens.gapMm ?? 0) + (lens.gapGrowsMm ?? 0)];
  const rim = [
    barrel - principal[1] - Math.max(...gaps),
    barrel + (lens.growsMm ?? 0) - principal[0] - Math.min(...gaps),
  ] as const;
  return { focal, principal, rim, ring };
}

interface Ray {
  readonly b: number;
  readonly d: number;
}

/** Bounds of b and d at the datum, over every way to place the tubes that are still to be placed. */
interface Rays {
  readonly least: Ray;
  readonly most: Ray;
}

/**
 * Both are linear in the length of each gap and grow with it. So the least lies where all that is still
 * to come adds to the gap in which it does least, by the slopes here; and no more can be had than with
 * all of it in every gap at once.
 */
function raysBehind(
  kit: KitParts,
  order: readonly number[],
  lengths: readonly number[],
  firstGap: number,
  { count, leastMm, mostMm }: StillToPlace,
): Rays {
  const added = (mm: number, isIn: (gap: number) => boolean): Ray =>
    rayBehind(
      kit,
      order,
      lengths.map((length, gap) => (isIn(gap) ? length + mm : length)),
    );
  if (count === 0) {
    const ray = rayBehind(kit, order, lengths);
    return { least: ray, most: ray };
  }
  let b = Number.POSITIVE_INFINITY;
  let d = Number.POSITIVE_INFINITY;
  for (let only = firstGap; only < lengths.length; only++) {
    const ray = added(leastMm, (gap) => gap === only);
    b = Math.min(b, ray.b);
    d = Math.min(d, ray.d);
  }
  return { least: { b, d }, most: added(mostMm, (gap) => gap >= firstGap) };
}

/** The axial ray at the datum. A converter whose length isn't known has no tube behind it. */
function rayBehind(
  { converters }: KitParts,
  order: readonly number[],
  lengths: readonly number[],
): Ray {
  let b = lengths[0] as number;
  let d = 1;
  for (const [place, index] of order.entries()) {
    const { factor, lengthMm } = converters[index] as ConverterPart;
    if (b === 0 || lengthMm === undefined) d *= factor;
    else {
      const { atMm, perMm } = converterLens(factor, lengthMm);
      b += d * atMm;
      d -= b * perMm;
      b += d * (lengthMm - atMm);
    }
    b += d * (lengths[place + 1] as number);
  }
  return { b, d };
}

/**
 * Whether any setting of the ring could do, and leave room before the lens, by bounds on each term.
 * The ray arrives at the lens at height h = b + d·f·(1 + m0), at the rim at h − m'·rim, m' being b/f +
 * d·m0; m is m' without a close-up lens of power P and m' + P·(h − m'·rim) with it; the subject lies
 * that height over m ahead.
 */
function mayReach(
  { least, most }: Rays,
  perMm: number,
  limits: LensLimits,
  search: KitSearch,
): boolean {
  const { focal, principal, rim, ring } = limits;
  const lens = [least.b / focal[1], most.b / focal[0] + most.d * ring] as const;
  // Behind a close-up the rim's place counts, but for light that is parallel there.
  if (Number.isNaN(rim[0])) {
    if (perMm === 0) return isWithin(lens[0], lens[1], search);
    return most.b === 0 && isWithin(perMm * least.d * focal[0], perMm * most.d * focal[1], search);
  }
  const falls = [lens[0] * rim[0], lens[0] * rim[1], lens[1] * rim[0], lens[1] * rim[1]];
  const atRim = [
    least.b + least.d * principal[0] - Math.max(...falls),
    most.b + most.d * principal[1] - Math.min(...falls),
  ] as const;
  if (atRim[1] <= 0) return false;
  return isWithin(lens[0] + perMm * Math.min(0, atRim[0]), lens[1] + perMm * atRim[1], search);
}

const isWithin = (least: number, most: number, { magnification, tolerance }: KitSearch): boolean =>
  magnification >= least * (1 - tolerance) && magnification <= most * (1 + tolerance);

function exactly(
  behind: readonly Piece[],
  closeUps: readonly number[],
  search: KitSearch,
): Way | undefined {
  const { body, lens, kit, magnification } = search;
  const before = closeUps.map((index): Piece => ({ kind: 'close-up', index }));
  const partOf = ({ kind, index }: Piece): ChainPart =>
    (kind === 'tube' ? kit.tubes : kind === 'converter' ? kit.converters : kit.closeUps)[index]!;
  const parts = [body, ...behind.map(partOf), lens, ...before.map(partOf)];
  const order = arrangeChain(parts);
  if (!order.ok) return undefined;
  const chain = behindFilters(order.chain, search.filtersMm ?? 0);
  const limits = reach(chain);
  if (!limits || !isWithin(limits[0], limits[1], search)) return undefined;
  const setting = ringFor(chain, magnification, limits);
  if (!setting) return undefined;
  const trace = traceChain(chain, setting.ringMagnification);
  // Where the room isn't known for want of a length, nothing speaks against the way.
  const hasRoom = trace.workingDistanceMm === undefined || trace.workingDistanceMm > 0;
  return trace.focus === 'real' && hasRoom ? { behind, before, chain, trace } : undefined;
}

/** Tubes by gap and converters between them, as pieces in their order. */
function arranged(
  converters: readonly number[],
  gaps: readonly (readonly number[])[],
): readonly Piece[] {
  return gaps.flatMap((tubes, gap) => [
    ...tubes.map((index): Piece => ({ kind: 'tube', index })),
    ...(gap < converters.length ? [{ kind: 'converter', index: converters[gap]! } as const] : []),
  ]);
}
