/** The rows of a lens's bench: what was measured, how far it is right, and what can't be used of it. */
import { RULER } from '../assumptions/lens-beliefs.ts';
import type { Reading } from '../lens-fit/fit.ts';
import type { ReadingKind, Setup } from '../lens-fit/reading.ts';
import { arrangeChain } from '../optics/arrangement.ts';
import type { ChainPart } from '../optics/parts.ts';
import { type Field, ifKnown, type Known } from '../plan/field.ts';
import type { BenchRow, Body, Lens } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { later } from '../words/message.ts';
import { flangeOf } from './assumed.ts';
import { findPart } from './find-part.ts';
import type { Finder, Named } from './named.ts';
import { plainPart } from './plain-part.ts';

export type BenchKey =
  | 'field'
  | 'magnification'
  | 'from-sensor'
  | 'working-distance'
  | 'effective-f-number';

const BENCH_KEYS: readonly BenchKey[] = [
  'field',
  'magnification',
  'from-sensor',
  'working-distance',
  'effective-f-number',
];

/** One measured value of a row, and what it says of the lens. */
export interface BenchValue {
  /** From 1. */
  readonly row: number;
  readonly key: BenchKey;
  readonly at: Place;
  /** As written: of an f-number itself, of which the reading has the stops. */
  readonly value: number;
  /** Marked f-number that an effective one belongs to. */
  readonly marked: number | undefined;
  readonly reading: Reading;
}

/** What can't be used of a row, and why. */
export interface BenchGap {
  readonly row: number;
  readonly at: Place;
  readonly because: string;
}

interface BenchRows {
  readonly values: readonly BenchValue[];
  readonly gaps: readonly BenchGap[];
}

/** The rows of a lens; none of a lens that has no bench. */
export function benchRows(finder: Finder, { fields }: Named<Lens>): BenchRows {
  const rows = ifKnown(fields.bench) ?? [];
  const read = rows.map((row, index) =>
    row.state === 'known' ? rowOf(finder, fields, row, index + 1) : NOTHING,
  );
  return {
    values: read.flatMap(({ values }) => values),
    gaps: read.flatMap(({ gaps }) => gaps),
  };
}

/** What is broken has a finding of its own. */
const NOTHING: BenchRows = { values: [], gaps: [] };

function rowOf(finder: Finder, lens: Lens, { value: row, at }: Known<BenchRow>, number: number) {
  const gap = (because: string, where: Place = at): BenchRows => ({
    values: [],
    gaps: [{ row: number, at: where, because }],
  });
  const ring = ifKnown(row.ring);
  const names = ifKnown(row.with);
  if (ring === undefined || !names?.every(({ state }) => state === 'known')) return NOTHING;
  const found = names.flatMap((name) => findPart(finder, ifKnown(name)!) ?? []);
  if (found.length < names.length) return NOTHING;
  const measured = BENCH_KEYS.filter((key) => row[key].state !== 'missing');
  if (measured.length === 0) return gap(later`nothing was measured in it`);
  const parts: ChainPart[] = [];
  for (const part of found) {
    if (part.kind === 'lens') return gap(later`it names a second lens`, row.with.at);
    const figure = plainPart(part);
    if (!figure.known) return NOTHING;
    parts.push(figure.value);
  }
  const setup: Setup = {
    behind: parts.filter(({ kind }) => kind !== 'close-up'),
    before: parts.filter(({ kind }) => kind === 'close-up'),
    ring,
  };
  const arranged = arrangeChain([...setup.behind, { kind: 'lens', focalMm: 1 }, ...setup.before]);
  if (!arranged.ok)
    return gap(
      arranged.fault.kind === 'needs'
        ? later`a converter ahead of tubes needs its \`length\``
        : later`its parts make no rig: a body first, then tubes and converters, then close-up lenses`,
      row.with.at,
    );
  if (ring !== 'infinity' && lens.closest.state === 'missing')
    return gap(later`the lens needs \`closest\`, or it has no ring to turn`, row.ring.at);
  const body = found.find((part) => part.kind === 'body')!.entry.fields;
  const values: BenchValue[] = [];
  const gaps: BenchGap[] = [];
  for (const key of measured) {
    const field = row[key] as Field<number>;
    if (field.state !== 'known') continue;
    const made = readingOf(key, field, row, lens, body);
    if (typeof made === 'string') gaps.push({ row: number, at: field.at, because: made });
    else if (made)
      values.push({
        row: number,
        key,
        at: field.at,
        value: field.value,
        marked: key === 'effective-f-number' ? ifKnown(row.marked) : undefined,
        reading: { setup, ...made },
      });
  }
  return { values, gaps };
}

type Made = Omit<Reading, 'setup'>;

/** @returns why it can't be used; undefined: what it needs is broken and has its own finding */
function readingOf(
  key: BenchKey,
  field: Known<number>,
  row: BenchRow,
  lens: Lens,
  body: Body,
): Made | string | undefined {
  const { value } = field;
  const made = (of: ReadingKind): Made => ({
    of,
    value,
    sigma: half(field, 2 * usualSigma(key, value)) / 2,
  });
  switch (key) {
    case 'field': {
      if (body.sensor.state === 'missing') return later`the body needs its \`sensor\``;
      const sensor = ifKnown(body.sensor);
      return sensor && made({ kind: 'field', sensorWidthMm: sensor.width });
    }
    case 'magnification':
    case 'from-sensor':
      return made({ kind: key });
    case 'working-distance': {
      if (lens.length.state === 'missing') return later`the lens needs its \`length\``;
      const to = made({ kind: key });
      const mount = flangeSigma(body);
      return mount === undefined
        ? later`the body needs its \`flange-distance\``
        : { ...to, sigma: Math.hypot(to.sigma, mount) };
    }
    case 'effective-f-number': {
      if (row.marked.state === 'missing') return later`it needs \`marked\``;
      const marked = ifKnown(row.marked);
      const { range } = field;
      const stops = range ? Math.log2(range.high / range.low) : RULER.lightStops;
      return marked === undefined
        ? undefined
        : { of: { kind: 'light' }, value: 2 * Math.log2(value / marked), sigma: stops / 2 };
    }
  }
}

/** How exact a ruler is: one standard deviation, in the unit of the reading. */
export function usualSigma(key: BenchKey, value: number): number {
  switch (key) {
    case 'field':
      return Math.max(RULER.fieldShare * value, RULER.fieldMm) / 2;
    case 'magnification':
      return (RULER.fieldShare * value) / 2;
    case 'from-sensor':
    case 'working-distance':
      return RULER.distanceMm / 2;
    case 'effective-f-number':
      return RULER.lightStops / 2;
  }
}

/**
 * How exactly the place of a body's mount is known, one standard deviation, mm: as given, or no better
 * than what is assumed of it; undefined: nothing is.
 */
export function flangeSigma(body: Body): number | undefined {
  if (body['flange-distance'].state === 'known') return 0;
  const prior = flangeOf(body)?.prior;
  return prior && (prior.high - prior.low) / 4;
}

/** Half of how wide a value is known, by its range or as usual; two standard deviations. */
const half = ({ value, range }: Known<number>, usual: number): number =>
  Math.max(range ? (range.high - range.low) / 2 : usual, LEAST_SHARE * value);

/** Nothing is measured more exactly than this; a range of no width is not taken by its word. */
const LEAST_SHARE = 1e-4;
