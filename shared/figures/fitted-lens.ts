/**
 * A lens as its bench shows it to be: what is printed on it and what is usual, narrowed by what a
 * ruler said. `shared/lens-fit/` does it with numbers; here the plan's fields become those numbers.
 */
import {
  AS_PRINTED,
  BEND_ENDS,
  gapEnds,
  gapGrowsEnds,
  IRIS_ENDS,
  pupilRatioEnds,
} from '../assumptions/lens-beliefs.ts';
import { fitLens, type LensFit, type Reading, saysSomething } from '../lens-fit/fit.ts';
import { believed, type LensBeliefs } from '../lens-fit/lens-beliefs.ts';
import type { Belief } from '../lens-fit/most-likely.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Body, Lens } from '../plan/generated/types.ts';
import { closestDistanceOf, closestMagnificationOf } from './assumed.ts';
import { findPart } from './find-part.ts';
import { benchRows } from './lens-bench.ts';
import type { Finder, Named } from './named.ts';

export const hasBench = ({ bench }: Lens): boolean => (ifKnown(bench)?.length ?? 0) > 0;

/**
 * The lens as it was fitted; undefined: it has no bench and `always` doesn't ask for one, or what is
 * needed of it is not known.
 *
 * @param body the body that it is used on, where no row of its bench names one
 */
export function fittedLens(
  finder: Finder,
  lens: Named<Lens>,
  body: Body | undefined,
  always = false,
): LensFit | undefined {
  if (!always && !hasBench(lens.fields)) return undefined;
  const written = finder.asWritten ?? finder;
  const own = written.find('lenses', lens.name) ?? lens;
  return fitWith(own.fields, [body, ...partsOfRows(written, own.fields)], () => {
    const beliefs = beliefsOf(own.fields, bodyOf(written, own.fields) ?? body);
    if (!beliefs) return undefined;
    const readings = benchRows(written, own)
      .values.map(({ reading }) => reading)
      .filter((reading) => saysSomething(beliefs, reading));
    return remembered(own.fields, beliefs, readings);
  });
}

/** The fields of all parts that rows name, in their order. */
const partsOfRows = (finder: Finder, { bench }: Lens): readonly unknown[] =>
  (ifKnown(bench) ?? []).flatMap((row) =>
    ((row.state === 'known' && ifKnown(row.value.with)) || []).map((name) =>
      name.state === 'known' ? findPart(finder, name.value)?.entry.fields : undefined,
    ),
  );

interface LastFit {
  readonly parts: readonly unknown[];
  readonly fit: LensFit | undefined;
}

const lastFits = new WeakMap<Lens, LastFit>();

/** The last fit of a lens, for as long as it and the parts that it was measured with are the same. */
function fitWith(
  of: Lens,
  parts: readonly unknown[],
  work: () => LensFit | undefined,
): LensFit | undefined {
  const last = lastFits.get(of);
  if (last?.parts.length === parts.length && last.parts.every((part, at) => part === parts[at]))
    return last.fit;
  const made = work();
  lastFits.set(of, { parts, fit: made });
  return made;
}

/** The body of the first row that names one. */
export function bodyOf(finder: Finder, { bench }: Lens): Body | undefined {
  for (const row of ifKnown(bench) ?? [])
    for (const name of (row.state === 'known' && ifKnown(row.value.with)) || []) {
      const part = name.state === 'known' ? findPart(finder, name.value) : undefined;
      if (part?.kind === 'body') return part.entry.fields;
    }
  return undefined;
}

const MOST_KEPT = 16;

/**
 * `work` on a lens and what was measured of it, with its last results kept for as long as the lens is
 * the same: it is fitted once for all rigs and shots that it is in.
 */
export function keptOfLens<T>(
  work: (beliefs: LensBeliefs, readings: readonly Reading[]) => T,
): (of: Lens, beliefs: LensBeliefs, readings: readonly Reading[]) => T {
  const results = new WeakMap<Lens, Map<string, T>>();
  return (of, beliefs, readings) => {
    const kept = results.get(of) ?? new Map<string, T>();
    results.set(of, kept);
    const key = JSON.stringify([beliefs, readings]);
    const found = kept.get(key);
    if (found !== undefined) return found;
    const made = work(beliefs, readings);
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(key, made);
    return made;
  };
}

const remembered = keptOfLens(fitLens);

/** What is believed of a lens by its sheet; undefined: its focal length or closest focus is not known. */
export function beliefsOf(lens: Lens, body: Body | undefined): LensBeliefs | undefined {
  const focal = lens['focal-length'];
  const { closest, length, extends: longer, 'pupil-ratio': ratio } = lens;
  if ([closest, length, longer, ratio].some(({ state }) => state === 'invalid')) return undefined;
  const focalBelief = printed(focal, AS_PRINTED['focal-length']);
  if (!focalBelief || focal.state !== 'known') return undefined;
  const gap = gapEnds(focal.value);
  const sensor = body && ifKnown(body.sensor);
  const ends = pupilRatioEnds(focal.value, sensor && Math.hypot(sensor.width, sensor.height));
  const beliefs = [
    focalBelief,
    believed(gap.low, gap.high),
    printed(ratio, AS_PRINTED['pupil-ratio']) ?? believed(ends.low, ends.high),
  ];
  const known = { lengthMm: ifKnown(length), growsMm: ifKnown(longer) };
  if (closest.state !== 'known') return { known, beliefs };
  const distance = closestDistanceOf(lens)?.prior;
  const times = closestMagnificationOf(lens)?.prior;
  const nearest = [
    printed(closest.value['from-sensor'], AS_PRINTED['closest.from-sensor']) ??
      (distance && believed(distance.low, distance.high)),
    printed(closest.value.magnification, AS_PRINTED['closest.magnification']) ??
      (times && believed(times.low, times.high)),
  ].filter((belief) => belief !== undefined);
  if (nearest.length < 2) return undefined;
  const grows = gapGrowsEnds(focal.value);
  const moving = [IRIS_ENDS, grows, BEND_ENDS].map(({ low, high }) => believed(low, high));
  return { known, beliefs: [...beliefs, ...nearest, ...moving] };
}

/** A range of no width is not taken by its word. */
const LEAST_SHARE = 1e-5;

/** Within its range, or as exact as such things are printed; undefined: it is not given. */
function printed(field: Field<number>, share: number): Belief | undefined {
  if (field.state !== 'known') return undefined;
  const { value, range } = field;
  const { middle, sigma } = range
    ? believed(range.low, range.high)
    : believed(value * (1 - share), value * (1 + share));
  return { middle, sigma: Math.max(sigma, LEAST_SHARE * value) };
}
