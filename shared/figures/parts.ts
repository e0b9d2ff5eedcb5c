/** The parts of a rig, looked up and put into the order of light: sensor to subject. */
import type { ChainPart } from '../optics/parts.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import type { Body, Lens, Rig } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { flangeOf, glassLoss, orAssumed } from './assumed.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';
import { type AnyPart, findPart } from './find-part.ts';
import { lensPart } from './lens-part.ts';
import type { Finder, Named } from './named.ts';
import { plainPart } from './plain-part.ts';

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
    chainParts: chainOf(found, [rig.fields.parts.at], reader),
  };
}

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
  reader: Finder,
): Figure<readonly ChainPart[]> {
  const body = parts.find((part) => part.kind === 'body')?.entry.fields;
  const figures = parts.map((part) =>
    part.kind === 'lens' ? lensPart(reader, part.entry, body) : plainPart(part),
  );
  if (figures.length === 0) return notKnown(message`the rig has no parts`);
  const named = known(undefined, from);
  return derive([named, ...figures], (_, ...values) => values as readonly ChainPart[]);
}
