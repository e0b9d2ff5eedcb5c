import { arrangeChain, behindFilters, type Chain, converterLens } from './arrangement.ts';
import { type ChainTrace, traceChain } from './chain.ts';
import { lensClosestFocalMm } from './focal-length.ts';
import { placeTubes, sequences, subsets } from './kit-orders.ts';
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

/**
 * All subsets and orders of a kit that reach a magnification with room before the lens, fewest parts
 * first, with equally many the least light lost first. Tubes next to each other are not told apart by
 * their order, nor are pieces that are alike. Looked for up to one part more than the fewest, a number
 * of parts at a time, so that no way with fewer is left out; what only adds parts to a way is left out.
 *
 * With (b, d) height and slope at the lens's datum of the axial ray of slope 1 from the sensor,
 * m = b/f + d·m0 without a close-up lens: bounds that hold at any setting of the ring strike out nearly
 * everything before the exact reach is asked. Source: ray-transfer matrices as in ray-matrix.ts.
 */
export function waysToReach(search: KitSearch, most: number): readonly Way[] {
  const { kit } = search;
  const whole = kit.tubes.length + kit.converters.length + kit.closeUps.length;
  const found: Way[] = [];
  for (let count = 0, last = whole; count <= last && found.length < most; count++) {
    const ways = waysWith(count, search, ENOUGH).sort(leastLossFirst);
    // More parts than one over the fewest are no remedy that anybody looks for.
    if (found.length === 0 && ways.length > 0) last = Math.min(whole, count + 1);
    found.push(...ways.filter((way) => !found.some((other) => adds(way, other))));
  }
  return found.slice(0, most);
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

/** Every way of exactly so many pieces, or as many ways as are enough. */
export function waysWith(
  count: number,
  search: KitSearch,
  enough = Number.POSITIVE_INFINITY,
): Way[] {
  const { kit } = search;
  const limits = lensLimits(search);
  const ways: Way[] = [];
  for (const before of subsets(kit.closeUps))
    for (const converters of sequences(kit.converters)) {
      const left = count - before.length - converters.length;
      if (left < 0 || left > kit.tubes.length) continue;
      const perMm = before.reduce((sum, index) => sum + kit.closeUps[index]!.powerDpt / 1000, 0);
      placeTubes(kit.tubes, converters, left, (gaps, lengths) => {
        if (ways.length >= enough) return;
        const ray = rayBehind(kit, converters, lengths);
        if (!ray || !mayReach(ray, perMm, limits, search)) return;
        const way = exactly(arranged(converters, gaps), before, search);
        if (way) ways.push(way);
      });
    }
  return ways;
}

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

/** The axial ray at the datum; undefined where a converter's length is needed and not known. */
function rayBehind(
  { converters }: KitParts,
  order: readonly number[],
  lengths: readonly number[],
): Ray | undefined {
  let b = lengths[0] as number;
  let d = 1;
  for (const [place, index] of order.entries()) {
    const { factor, lengthMm } = converters[index] as ConverterPart;
    if (b === 0) d *= factor;
    else {
      if (lengthMm === undefined) return undefined;
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
function mayReach({ b, d }: Ray, perMm: number, limits: LensLimits, search: KitSearch): boolean {
  const { focal, principal, rim, ring } = limits;
  const lens = [b / focal[1], b / focal[0] + d * ring] as const;
  // Behind a close-up the rim's place counts, but for light that is parallel there.
  if (Number.isNaN(rim[0])) {
    const power = b === 0 ? perMm * d : Number.NaN;
    return perMm === 0
      ? isWithin(lens[0], lens[1], search)
      : isWithin(power * focal[0], power * focal[1], search);
  }
  const falls = [lens[0] * rim[0], lens[0] * rim[1], lens[1] * rim[0], lens[1] * rim[1]];
  const atRim = [
    b + d * principal[0] - Math.max(...falls),
    b + d * principal[1] - Math.min(...falls),
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
