/** Everything but lenses as parts of the optical chain. */
import type { ChainPart } from '../optics/parts.ts';
import { ifKnown } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import { flangeOf } from './assumed.ts';
import { derive, type Figure, figureOf, known, silent } from './figure.ts';
import type { AnyPart } from './find-part.ts';

/** A part as the optical chain takes it; what it can do without may be left out. */
export function plainPart(part: Exclude<AnyPart, { kind: 'lens' }>): Figure<ChainPart> {
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
  }
}

type AnyField = { readonly state: string; readonly at: Place };

/** A figure that also follows from fields which may be left out. */
export function withFrom<T>(figure: Figure<T>, fields: readonly AnyField[]): Figure<T> {
  if (!figure.known) return figure;
  const written = fields.filter((field) => field.state === 'known').map((field) => field.at);
  return derive([figure, known(undefined, written)], (value) => value);
}

function optional(fields: readonly AnyField[], make: () => ChainPart): Figure<ChainPart> {
  if (fields.some((field) => field.state === 'invalid')) return silent;
  return withFrom(known(make()), fields);
}
