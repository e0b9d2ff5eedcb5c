/**
 * Which measurements of a lens would help most, one after the other: each narrows the widest figure
 * that the plan's own shots are decided by, most of all that could be taken. By the linearised posterior: a reading of slope j (over the axes of
 * what is uncertain) and standard deviation s takes (g·j)²/(s² + j·j) off the variance g·g of a figure
 * of slope g.
 * Source: D. J. C. MacKay, Information-based objective functions for active data selection, 1992.
 */
import type { Bench } from '../figures/bench.ts';
import { changedBench } from '../figures/changed.ts';
import { figuresOf } from '../figures/compute.ts';
import { fittedLens } from '../figures/fitted-lens.ts';
import type { Named } from '../figures/named.ts';
import type { Pick } from '../figures/uncertain.ts';
import { dot, type Vector } from '../lens-fit/cholesky.ts';
import { type LensFit, lensAt } from '../lens-fit/fit.ts';
import { predicted } from '../lens-fit/reading.ts';
import { ifKnown } from '../plan/field.ts';
import type { Lens } from '../plan/generated/types.ts';
import { type Candidate, candidates } from './setups.ts';

/** What shots are decided by, as far as a lens has a say in it. */
type Deciding = 'depth' | 'light' | 'working-distance';

const PICKS: Readonly<Record<Deciding, Pick>> = {
  depth: ({ usableDepthMm }) => usableDepthMm,
  light: ({ lightLossStops }) => lightLossStops,
  'working-distance': ({ workingDistanceMm }) => workingDistanceMm,
};

/** How wide a figure is over all shots with the lens, before and after a measurement. */
export interface Narrowed {
  readonly figure: Deciding;
  /** Those that it narrows. */
  readonly shots: readonly string[];
  /** Half widths, the widest of these shots: shares of the value; of light, stops. */
  readonly from: number;
  readonly to: number;
}

/** One measurement, and what it gives when those before it were taken. */
export interface Measurement {
  readonly candidate: Candidate;
  readonly narrows: readonly Narrowed[];
  /** Half width of the widest figure before it, as a share. */
  readonly widest: number;
}

export interface NextMeasurements {
  readonly lens: string;
  /** Rows that its bench has. */
  readonly rows: number;
  readonly fit: LensFit;
  /** The one that helps most first; none: no shot has a figure that a measurement would narrow. */
  readonly next: readonly Measurement[];
}

/** Nearly everything lies within so many standard deviations. */
const SIGMAS = 2;
/** What a measurement narrows by less than this share is not worth its while. */
const WORTH = 0.1;
/** Narrower than this, nobody needs to know a figure. */
const WIDE = 0.01;

/** One figure of one shot, as it follows the lens. */
interface Followed {
  readonly shot: string;
  readonly figure: Deciding;
  /** Over one standard deviation of each axis, in shares of the value; of light in stops. */
  readonly slopes: Vector;
}

/** A measurement that could be taken, as it follows the lens. */
interface Judged {
  readonly candidate: Candidate;
  readonly slopes: Vector;
}

/**
 * @param benches shots whose rig has the lens, at least one
 * @param most measurements, one after the other
 * @returns undefined: what is needed of the lens is not known
 */
export function nextMeasurements(
  lens: Named<Lens>,
  benches: readonly Bench[],
  most = 1,
): NextMeasurements | undefined {
  const body = benches.find((bench) => bench.body)?.body;
  const reader = benches[0]?.source.reader;
  if (!body || !reader) return undefined;
  const fit = fittedLens(reader, lens, body.fields, true);
  if (!fit) return undefined;
  const rows = ifKnown(lens.fields.bench)?.length ?? 0;
  let followed = benches.flatMap((bench) => follow(bench, fit));
  const next: Measurement[] = [];
  let judged: readonly Judged[] | undefined;
  while (next.length < most) {
    const widest = widestOf(followed);
    if (!widest || weight(widest) < WIDE) break;
    judged ??= candidates(reader, lens, body, fit).map((candidate) => ({
      candidate,
      slopes: slopesOf(fit, candidate),
    }));
    const best = bestOf(judged, widest);
    if (!best) break;
    const narrows = narrowed(followed, best, widest.figure);
    if (narrows.length === 0) break;
    next.push({ candidate: best.candidate, narrows, widest: weight(widest) });
    const then = afterwards(best);
    followed = followed.map((one) => ({ ...one, slopes: then(one.slopes) }));
    // The same again is as far off as it was.
    judged = judged
      .filter((one) => one !== best)
      .map((one) => ({ ...one, slopes: then(one.slopes) }));
  }
  return { lens: lens.name, rows, fit, next };
}

const widestOf = (followed: readonly Followed[]): Followed | undefined =>
  followed.reduce<Followed | undefined>(
    (most, next) => (!most || weight(next) > weight(most) ? next : most),
    undefined,
  );

/** Nearer to each other than this, the setup of fewer parts is preferred, which comes first. */
const EVEN = 0.02;

function bestOf(judged: readonly Judged[], widest: Followed): Judged | undefined {
  const left = (one: Judged): number => after(widest.slopes, one);
  return judged.reduce<Judged | undefined>(
    (most, next) => (!most || left(next) < left(most) * (1 - EVEN) ? next : most),
    undefined,
  );
}

/**
 * Slopes over the axes of what is uncertain once a reading was taken: of slope j, it leaves the
 * covariance I − jjᵀ/(s² + j·j), whose root is I − c·jjᵀ with c = (1 − s/√(s² + j·j))/(j·j).
 */
function afterwards({ slopes: reading, candidate: { sigma } }: Judged): (slopes: Vector) => Vector {
  const square = dot(reading, reading);
  if (square === 0) return (slopes) => slopes;
  const share = (1 - sigma / Math.sqrt(sigma ** 2 + square)) / square;
  return (slopes) => {
    const along = share * dot(slopes, reading);
    return slopes.map((slope, axis) => slope - along * reading[axis]!);
  };
}

/** A stop is this share of the light. */
const LIGHT_SHARE = Math.LN2;

/** Half width as a share, so that figures of all kinds can be compared. */
const weight = ({ figure, slopes }: Followed): number =>
  SIGMAS * Math.sqrt(dot(slopes, slopes)) * (figure === 'light' ? LIGHT_SHARE : 1);

/** What is left of one standard deviation of a figure. */
function after(slopes: Vector, { slopes: reading, candidate: { sigma } }: Judged): number {
  const gained = dot(slopes, reading) ** 2 / (sigma ** 2 + dot(reading, reading));
  return Math.sqrt(Math.max(0, dot(slopes, slopes) - gained));
}

const slopesOf = (fit: LensFit, { setup, of }: Candidate): Vector =>
  fit.axes.map((_, axis) => {
    const at = (stand: number) => predicted(lensAt(fit, standing(axis, stand)), setup, of);
    const slope = (at(1) - at(-1)) / 2;
    return Number.isFinite(slope) ? slope : 0;
  });

const standing = (axis: number, stand: number): Vector =>
  Array.from({ length: axis + 1 }, (_, at) => (at === axis ? stand : 0));

function follow(bench: Bench, fit: LensFit): readonly Followed[] {
  const at = (axis: number, stand: number) =>
    figuresOf(changedBench(bench, [{ kind: 'lens-axis', axis, value: stand }]));
  const middle = at(0, 0);
  const ends = fit.axes.map((_, axis) => [at(axis, -1), at(axis, 1)] as const);
  return (Object.keys(PICKS) as Deciding[]).flatMap((figure): readonly Followed[] => {
    const pick = PICKS[figure];
    const value = pick(middle);
    // A working distance of 0 or less has a finding of its own.
    if (!value.known || !Number.isFinite(value.value) || !(value.value > 0)) return [];
    const slopes = ends.map(([down, up]) => {
      const [low, high] = [pick(down), pick(up)];
      // Where an end leaves the figure without a value, the other half says how steep it is.
      const steps = [
        low.known ? value.value - low.value : null,
        high.known ? high.value - value.value : null,
      ];
      const known = steps.filter((step) => step !== null && Number.isFinite(step)) as number[];
      return known.length === 0 ? 0 : known.reduce((sum, step) => sum + step, 0) / known.length;
    });
    const scale = figure === 'light' ? 1 : value.value;
    return [{ shot: bench.shot, figure, slopes: slopes.map((slope) => slope / scale) }];
  });
}

/** What a reading does to all figures of all shots, the widest figure first. */
function narrowed(
  followed: readonly Followed[],
  reading: Judged,
  first: Deciding,
): readonly Narrowed[] {
  const order = [first, ...(Object.keys(PICKS) as Deciding[]).filter((one) => one !== first)];
  return order.flatMap((figure): readonly Narrowed[] => {
    const changed = followed
      .filter((one) => one.figure === figure)
      .map((one) => ({
        shot: one.shot,
        from: SIGMAS * Math.sqrt(dot(one.slopes, one.slopes)),
        to: SIGMAS * after(one.slopes, reading),
      }))
      .filter(({ from, to }) => from > WIDE && to < from * (1 - WORTH));
    if (changed.length === 0) return [];
    return [
      {
        figure,
        shots: changed.map(({ shot }) => shot),
        from: Math.max(...changed.map(({ from }) => from)),
        to: Math.max(...changed.map(({ to }) => to)),
      },
    ];
  });
}
