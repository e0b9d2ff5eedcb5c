/** Which measurement of a lens would help most next, in words. */
import type { KnownOfLens, MeasureAdvice, MeasureNext } from '../api/measure.ts';
import type { SheetMeasurement } from '../api/sheet.ts';
import type { Bench } from '../figures/bench.ts';
import type { Named } from '../figures/named.ts';
import { type LensFit, lensAt, sureness } from '../lens-fit/fit.ts';
import {
  type Measurement,
  type Narrowed,
  type NextMeasurements,
  nextMeasurements,
} from '../measure/next-measurement.ts';
import type { Candidate } from '../measure/setups.ts';
import { lensClosestFocalMm } from '../optics/focal-length.ts';
import type { LensPart } from '../optics/parts.ts';
import type { Lens } from '../plan/generated/types.ts';
import type { FileId } from '../plan/place.ts';
import { endsWords } from '../say/between.ts';
import type { Say } from '../say/say.ts';
import { significant } from '../say/say.ts';
import { inLanguage, later, message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';

/** Of more shots than these with one lens, the first are asked: the others differ little from them. */
const MOST_SHOTS = 24;

/** Of each lens that shots of the plan use, in the order of the shots; or of that one alone. */
export function measureAdvice(
  { analysis, say }: Context,
  file: FileId,
  lens?: string,
): readonly MeasureAdvice[] {
  return measuredNext(analysis, file, lens).map((found) => adviceOf(found, say));
}

/** @param most measurements of one lens, one after the other */
function measuredNext(
  analysis: Context['analysis'],
  file: FileId,
  lens?: string,
  most?: number,
): readonly NextMeasurements[] {
  const byLens = new Map<string, readonly [Named<Lens>, readonly Bench[]]>();
  for (const id of analysis.shots(file)) {
    const bench = analysis.bench(file, id);
    const used = bench?.lens;
    if (!bench || !used || (lens !== undefined && used.name !== lens)) continue;
    const [, benches] = byLens.get(used.name) ?? [used, []];
    if (benches.length < MOST_SHOTS) byLens.set(used.name, [used, [...benches, bench]]);
  }
  return [...byLens.values()].flatMap(([used, benches]) => {
    return nextMeasurements(used, benches, most) ?? [];
  });
}

function adviceOf({ lens, rows, fit, next }: NextMeasurements, say: Say): MeasureAdvice {
  const [best] = next;
  return { lens, rows, known: knownOf(fit), next: best ? nextOf(lens, best, say) : null };
}

/** Three of a lens settle most of it, and a page holds so many. */
const MOST_OF_LENS = 3;
const MOST_ON_SHEET = 5;
/** A share: nobody builds a setup for figures that are surer than this. */
const SURE = 0.05;

/** Of all lenses together, the one that helps most first. */
export function sheetMeasurements(
  { analysis, say }: Context,
  file: FileId,
): readonly SheetMeasurement[] {
  return measuredNext(analysis, file, undefined, MOST_OF_LENS)
    .flatMap(({ lens, next }) => next.map((one) => ({ lens, ...one })))
    .filter(({ widest }) => widest > SURE)
    .sort((a, b) => b.widest - a.widest)
    .slice(0, MOST_ON_SHEET)
    .map(({ lens, ...one }) => {
      const { how, gives, row, with: parts, ring } = nextOf(lens, one, say);
      const given = { with: parts, ring };
      return { lens, how, gives, row, given, boxes: boxesOf(one.candidate.key, say) };
    });
}

/** What is written down by hand, with its unit where it has one. */
function boxesOf(key: Candidate['key'], say: Say): SheetMeasurement['boxes'] {
  const unit = rulerUnit(say);
  switch (key) {
    case 'field':
      return [{ label: message`Width of field`, unit, key }];
    case 'working-distance':
      return [{ label: message`Working distance`, unit, key }];
    case 'from-sensor':
      return [{ label: message`Distance from sensor`, unit, key }];
    case 'effective-f-number':
      return [
        { label: message`Marked f-number`, unit: null, key: 'marked' },
        { label: message`Stops darker`, unit: null, key: null },
        { label: message`Effective f-number`, unit: null, key },
      ];
  }
}

/** Nearly everything lies within so many standard deviations. */
const SIGMAS = 2;

export function knownOf(fit: LensFit): readonly KnownOfLens[] {
  const middle = lensAt(fit);
  const of = (what: KnownOfLens['what'], take: (lens: LensPart) => number): KnownOfLens => {
    const by = SIGMAS * sureness(fit, take);
    const value = take(middle);
    return { what, value, low: value - by, high: value + by };
  };
  return [
    of('focalLengthMm', ({ focalMm }) => focalMm),
    ...(middle.closest
      ? [
          of('closestFocalLengthMm', lensClosestFocalMm),
          of('closestMagnification', ({ closest }) => closest!.magnification),
        ]
      : []),
    of('principalPlanesApartMm', ({ gapMm }) => gapMm ?? 0),
    of('pupilRatio', ({ pupilRatio }) => pupilRatio ?? 1),
  ];
}

const KNOWN: Readonly<
  Record<
    KnownOfLens['what'],
    { readonly label: string; readonly print: (say: Say, value: number) => string }
  >
> = {
  focalLengthMm: { label: later`focal length`, print: (say, mm) => say.length(mm) },
  closestFocalLengthMm: {
    label: later`focal length at closest focus`,
    print: (say, mm) => say.length(mm),
  },
  closestMagnification: {
    label: later`magnification at closest focus`,
    print: (say, m) => say.magnification(m),
  },
  principalPlanesApartMm: {
    label: later`distance between principal planes`,
    print: (say, mm) => say.length(mm),
  },
  pupilRatio: { label: later`pupil ratio`, print: (_, ratio) => significant(ratio, 2) },
};

export const knownLabel = ({ what }: KnownOfLens): string => inLanguage(KNOWN[what].label);

/** "199 mm (198 to 200)" */
export function knownWords({ what, value, low, high }: KnownOfLens, say: Say): string {
  const print = (one: number) => KNOWN[what].print(say, one);
  const ends = endsWords(print(value), print(low), print(high));
  return ends === '' ? print(value) : `${print(value)} (${ends})`;
}

function nextOf(
  lens: string,
  { candidate, narrows }: Pick<Measurement, 'candidate' | 'narrows'>,
  say: Say,
): MeasureNext {
  const { with: parts, ring, key, expected } = candidate;
  return {
    with: parts,
    ring,
    measure: key,
    expected,
    row: rowOf(candidate, say),
    how: howWords(lens, candidate, say),
    gives: givesWords(narrows, say),
    narrows,
  };
}

/** What a ruler has, where lengths are read so: a unit of plans. */
const rulerUnit = (say: Say): string => (say.lengths === 'mm' ? 'mm' : 'in');

/** `{ with: [body-a, tube-36], ring: closest, field: ? mm }` */
function rowOf({ with: parts, ring, key }: Candidate, say: Say): string {
  const value = key === 'effective-f-number' ? '?, marked: ?' : `? ${rulerUnit(say)}`;
  return `{ with: [${parts.join(', ')}], ring: ${ring}, ${key}: ${value} }`;
}

/** What to put together, where the ring goes, and what to read. */
function howWords(lens: string, { with: parts, ring, key, expected }: Candidate, say: Say): string {
  const between = parts.slice(1).join(' + ');
  const lone = between === '' ? message`${lens} alone` : message`${lens} with ${between}`;
  const setup =
    ring === 'closest'
      ? message`${lone}, ring at closest focus`
      : message`${lone}, ring at infinity`;
  switch (key) {
    case 'field':
      return message`Set up ${setup}, with a ruler in focus across the frame: a still shows about ${say.length(expected)} of it.`;
    case 'working-distance':
      return message`Set up ${setup}, with a card in focus: it is about ${say.length(expected)} from the front of the lens.`;
    case 'from-sensor':
      return message`Set up ${setup}, with a card in focus: it is about ${say.length(expected)} from the sensor mark.`;
    case 'effective-f-number':
      return message`Set up ${setup}, before an evenly lit wall: it is about ${say.stops(expected)} darker than with the lens alone at infinity. Multiply the marked f-number by √2 for each stop.`;
  }
}

const FIGURES: Readonly<Record<Narrowed['figure'], string>> = {
  depth: later`depth of field`,
  light: later`light`,
  'working-distance': later`working distance`,
};

/** "Depth of field of 3 shots from ±12% to ±3%." */
function givesWords(narrows: readonly Narrowed[], say: Say): string {
  const each = narrows.map(({ figure, shots, from, to }) => {
    const half = (share: number): string =>
      figure === 'light' ? `±${say.stops(share)}` : `±${say.percent(share)}`;
    const name = inLanguage(FIGURES[figure]);
    return shots.length === 1
      ? message`${name} of ${shots[0]!} from ${half(from)} to ${half(to)}`
      : message`${name} of ${shots.length} shots from ${half(from)} to ${half(to)}`;
  });
  return message`It narrows ${each.join('; ')}.`;
}
