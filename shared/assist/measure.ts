/** Which measurement of a lens would help most next, in words. */
import type { KnownOfLens, MeasureAdvice, MeasureNext } from '../api/measure.ts';
import { type LensFit, lensAt, sureness } from '../lens-fit/fit.ts';
import {
  type Narrowed,
  type NextMeasurement,
  nextMeasurement,
} from '../measure/next-measurement.ts';
import type { Candidate } from '../measure/setups.ts';
import { lensClosestFocalMm } from '../optics/focal-length.ts';
import type { LensPart } from '../optics/parts.ts';
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
  const byLens = new Map<string, Parameters<typeof nextMeasurement>>();
  for (const id of analysis.shots(file)) {
    const bench = analysis.bench(file, id);
    const used = bench?.lens;
    if (!bench || !used || (lens !== undefined && used.name !== lens)) continue;
    const [, benches] = byLens.get(used.name) ?? [used, []];
    if (benches.length < MOST_SHOTS) byLens.set(used.name, [used, [...benches, bench]]);
  }
  return [...byLens.values()].flatMap(([used, benches]) => {
    const found = nextMeasurement(used, benches);
    return found ? [adviceOf(found, say)] : [];
  });
}

function adviceOf({ lens, rows, fit, best }: NextMeasurement, say: Say): MeasureAdvice {
  return { lens, rows, known: knownOf(fit), next: best && nextOf(lens, best, say) };
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
  { candidate, narrows }: NonNullable<NextMeasurement['best']>,
  say: Say,
): MeasureNext {
  const { with: parts, ring, key, expected } = candidate;
  return {
    with: parts,
    ring,
    measure: key,
    expected,
    row: rowOf(candidate),
    how: howWords(lens, candidate, say),
    gives: givesWords(narrows, say),
    narrows,
  };
}

const UNIT: Readonly<Record<Candidate['key'], string>> = {
  field: '? mm',
  'from-sensor': '? mm',
  'working-distance': '? mm',
  'effective-f-number': '?, marked: ?',
};

/** `{ with: [body-a, tube-36], ring: closest, field: ? mm }` */
const rowOf = ({ with: parts, ring, key }: Candidate): string =>
  `{ with: [${parts.join(', ')}], ring: ${ring}, ${key}: ${UNIT[key]} }`;

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
