/** The parts of a rig, looked up and put into the order of light: sensor to subject. */
import type { ChainPart } from '../optics/parts.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import type { Spaces } from '../plan/generated/names.ts';
import type { Body, CloseUp, Converter, Lens, Rig, Tube } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import {
  closestDistanceOf,
  closestMagnificationOf,
  flangeOf,
  glassLoss,
  orAssumed,
} from './assumed.ts';
import type { Constants } from './constants.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import type { Finder, Named } from './named.ts';

export type AnyPart =
  | { readonly kind: 'body'; readonly entry: Named<Body> }
  | { readonly kind: 'converter'; readonly entry: Named<Converter> }
  | { readonly kind: 'tube'; readonly entry: Named<Tube> }
  | { readonly kind: 'lens'; readonly entry: Named<Lens> }
  | { readonly kind: 'close-up'; readonly entry: Named<CloseUp> };

/** One part of the rig, from the sensor toward the subject, as its entry names it. */
export interface NamedPart {
  readonly name: string;
  readonly kind: ChainPart['kind'];
  /** Where the rig names it. */
  readonly at: Place;
  /** Its own entry. */
  readonly defined: Place;
  readonly massKg: Figure<number>;
  /** Its own centre of gravity, if given: see `balance` of its entry. */
  readonly balanceMm: number | undefined;
  /**
   * Mount face to mount face, or to the front; undefined if unknown, 0 for a part that adds no
   * length.
   */
  readonly lengthMm: Figure<number>;
  /** Glass loss, stops; bodies and tubes have none. */
  readonly lossStops: Figure<number>;
}

export interface PartsLayout {
  readonly body: Named<Body> | undefined;
  readonly lens: Named<Lens> | undefined;
  readonly parts: Figure<readonly NamedPart[]>;
  readonly chainParts: Figure<readonly ChainPart[]>;
}

export function layOutParts(reader: Finder, rig: Named<Rig> | undefined): PartsLayout {
  const list = rig && ifKnown(rig.fields.parts);
  if (!rig || !list) {
    const figure =
      rig && rig.fields.parts.state === 'missing'
        ? (figureOf(rig.fields.parts, rig.name) as Figure<never>)
        : silent;
    return { body: undefined, lens: undefined, parts: figure, chainParts: figure };
  }
  const found: AnyPart[] = [];
  const places: Place[] = [];
  let complete = true;
  for (const item of list) {
    const part = isKnown(item) ? findPart(reader, item.value) : undefined;
    if (part) {
      found.push(part);
      places.push(item.at);
    } else complete = false;
  }
  const body = found.find((part) => part.kind === 'body')?.entry;
  const lens = found.find((part) => part.kind === 'lens')?.entry;
  if (!complete) return { body, lens, parts: silent, chainParts: silent };
  const parts = found.map((part, index) => namedPart(part, places[index]!));
  return {
    body,
    lens,
    parts: { known: true, value: parts, from: [rig.fields.parts.at] },
    chainParts: chainOf(found, [rig.fields.parts.at], reader.constants),
  };
}

export function findPart(reader: Finder, name: string): AnyPart | undefined {
  for (const group of Object.keys(KIND_OF) as PartGroup[]) {
    const entry = reader.find(group, name);
    if (!entry) continue;
    const kind = KIND_OF[group];
    return { kind, entry } as AnyPart;
  }
  return undefined;
}

/** The groups that parts of a rig come from. */
type PartGroup = Spaces['parts'];

const KIND_OF: Readonly<Record<PartGroup, AnyPart['kind']>> = {
  bodies: 'body',
  converters: 'converter',
  tubes: 'tube',
  lenses: 'lens',
  'close-up-lenses': 'close-up',
};

function namedPart(part: AnyPart, at: Place): NamedPart {
  const { name } = part.entry;
  const lossStops =
    part.kind === 'body' || part.kind === 'tube'
      ? known(0)
      : part.kind === 'lens'
        ? lensLoss(part.entry)
        : orAssumed(part.entry.fields.loss, name, glassLoss[part.kind]);
  const { file, entry } = part.entry;
  return {
    name,
    kind: part.kind,
    at,
    defined: { file, entry, path: [] },
    massKg: figureOf<number>(part.entry.fields.mass, name),
    balanceMm: 'balance' in part.entry.fields ? ifKnown(part.entry.fields.balance) : undefined,
    lengthMm: lengthOf(part),
    lossStops,
  };
}

/** Light that a lens's glass takes, stops: as given, from its T-stop, or as usual. */
export function lensLoss({ name, fields }: Named<Lens>): Figure<number> {
  const { loss, 't-stop': transmission, aperture } = fields;
  if (loss.state !== 'missing' || transmission.state === 'missing')
    return orAssumed(loss, name, glassLoss.lens);
  return derive([figureOf(transmission, name), figureOf(aperture, name)], (t, { from: widest }) =>
    t >= widest
      ? 2 * Math.log2(t / widest)
      : notKnown(message`the T-stop of ${name} is below its widest f-number`),
  );
}

/** What a part adds to the rig's length; a body reaches from its sensor to its mount. */
function lengthOf(part: AnyPart): Figure<number> {
  const { name } = part.entry;
  if (part.kind === 'body')
    return orAssumed(part.entry.fields['flange-distance'], name, flangeOf(part.entry.fields));
  const { length } = part.entry.fields;
  // A close-up lens in its ring adds almost no length.
  if (part.kind === 'close-up' && length.state === 'missing') return known(0);
  return figureOf<number>(length, name);
}

/** All parts as the optical chain takes them; what it can do without may be left out. */
function chainOf(
  parts: readonly AnyPart[],
  from: readonly Place[],
  constants: Constants,
): Figure<readonly ChainPart[]> {
  const figures = parts.map((part) => chainPart(part, constants));
  if (figures.length === 0) return notKnown(message`the rig has no parts`);
  const named = known(undefined, from);
  return derive([named, ...figures], (_, ...values) => values as readonly ChainPart[]);
}

function chainPart(part: AnyPart, { irisKeepsSize }: Constants): Figure<ChainPart> {
  const { name } = part.entry;
  switch (part.kind) {
    case 'body': {
      const { 'flange-distance': flange } = part.entry.fields;
      return optional([flange], () => ({
        kind: 'body',
        flangeMm: ifKnown(flange) ?? flangeOf(part.entry.fields)?.prior.middle,
      }));
    }
    case 'tube':
      return derive([figureOf(part.entry.fields.length, name)], (lengthMm) => ({
        kind: 'tube' as const,
        lengthMm,
      }));
    case 'converter': {
      const { factor, length } = part.entry.fields;
      if (length.state === 'invalid') return silent;
      const figure = derive([figureOf(factor, name)], (value) => ({
        kind: 'converter' as const,
        factor: value,
        lengthMm: ifKnown(length),
      }));
      return withFrom(figure, [length]);
    }
    case 'close-up': {
      const { power, length } = part.entry.fields;
      if (length.state === 'invalid') return silent;
      const figure = derive([figureOf(power, name)], (powerDpt) => ({
        kind: 'close-up' as const,
        powerDpt,
        lengthMm: ifKnown(length),
      }));
      return withFrom(figure, [length]);
    }
    case 'lens':
      return lensPart(part.entry, irisKeepsSize);
  }
}

function lensPart({ name, fields }: Named<Lens>, irisKeepsSize: number): Figure<ChainPart> {
  const { 'focal-length': focal, length, extends: grows } = fields;
  const pupilRatio = fields['pupil-ratio'];
  const closestField = fields.closest;
  if ([closestField, length, grows, pupilRatio].some((field) => field.state === 'invalid'))
    return silent;
  const closest = ifKnown(closestField);
  const inputs = closest
    ? derive(
        [
          orAssumed(closest['from-sensor'], name, closestDistanceOf(fields)),
          orAssumed(closest.magnification, name, closestMagnificationOf(fields)),
        ],
        (fromSensorMm, magnification) => ({ fromSensorMm, magnification }),
      )
    : known(undefined);
  const figure = derive([figureOf(focal, name), inputs], (focalMm, nearest) => ({
    kind: 'lens' as const,
    focalMm,
    closest: nearest,
    lengthMm: ifKnown(length),
    growsMm: ifKnown(grows),
    pupilRatio: ifKnown(pupilRatio),
    irisKeepsSize,
  }));
  return withFrom(figure, [length, grows, pupilRatio]);
}

type AnyField = { readonly state: string; readonly at: Place };

/** A figure that also follows from fields which may be left out. */
function withFrom<T>(figure: Figure<T>, fields: readonly AnyField[]): Figure<T> {
  if (!figure.known) return figure;
  const written = fields.filter((field) => field.state === 'known').map((field) => field.at);
  return derive([figure, known(undefined, written)], (value) => value);
}

function optional(fields: readonly AnyField[], make: () => ChainPart): Figure<ChainPart> {
  if (fields.some((field) => field.state === 'invalid')) return silent;
  return withFrom(known(make()), fields);
}
