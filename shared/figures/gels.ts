/** Gels on a light in a shot: the colour behind them, and the light that they take. */
import { miredOf, shiftedKelvin, stopsOfTransmission } from '../exposure/mired.ts';
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import type { GroupTypes, Light } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import type { Kelvin } from '../quantity/brands.ts';
import { message } from '../words/message.ts';
import type { LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent, unknownOf } from './figure.ts';
import type { Named } from './named.ts';
import { lookUp, type PlanReader } from './reader.ts';

type Gel = Named<GroupTypes['gels']>;
type Colour = Light['colour-temperature'];

/** null: a name that is none, which has its own finding. */
export function gelsIn(
  reader: PlanReader,
  list: Field<readonly Field<string>[]>,
): readonly Gel[] | null {
  if (list.state === 'missing') return [];
  if (list.state === 'invalid') return null;
  const gels: Gel[] = [];
  for (const item of list.value) {
    const gel = lookUp(reader, 'gels', item);
    if (gel.state !== 'found') return null;
    gels.push(gel.entry);
  }
  return gels;
}

/** Transmissions multiply, so their stops add up. */
export function gelStops(gels: readonly Gel[] | null): Figure<number> {
  if (gels === null) return silent;
  const each = gels.map(({ name, fields }) =>
    derive([figureOf(fields.transmission, name)], (share) =>
      share > 0 ? stopsOfTransmission(share) : notKnown(message`${name} lets no light through`),
    ),
  );
  const unknown = each.filter((figure) => !figure.known);
  if (unknown.length > 0) return unknownOf(unknown);
  return each.length === 0
    ? known(0)
    : derive(each, (...stops) => stops.reduce((sum, one) => sum + one, 0));
}

/** Their shift in all, mired; null: not known. */
export function shiftOf(gels: readonly Gel[] | null): number | null {
  const shifts = gels?.map(({ fields }) => fields.shift) ?? [];
  if (gels === null || shifts.some(({ state }) => state === 'invalid')) return null;
  return shifts.reduce((sum, shift) => sum + (isKnown(shift) ? shift.value : 0), 0);
}

/** What a rule reports: behind such gels no figure of the colour is known. */
export function tooBlueFor(
  colour: Colour,
  gels: readonly Gel[] | null,
  at: Place,
): LightInUse['tooBlue'] {
  const shift = shiftOf(gels);
  if (shift === null || colour.state !== 'known') return null;
  return shiftedKelvin(colour.value, shift) === null
    ? { shift, mired: miredOf(colour.value), at }
    : null;
}

/** The light's colour behind its gels, with the ends of what is known roughly. */
export function gelledColour(colour: Colour, gels: readonly Gel[] | null): Colour {
  if (gels?.length === 0 || colour.state !== 'known') return colour;
  const mired = shiftOf(gels);
  if (mired === null) return { state: 'invalid', at: colour.at };
  const behind = (kelvin: number): Kelvin | null => shiftedKelvin(kelvin, mired) as Kelvin | null;
  const value = behind(colour.value);
  if (value === null) return { state: 'invalid', at: colour.at };
  const { range } = colour;
  const [low, high] = range ? [behind(range.low), behind(range.high)] : [null, null];
  const { at } = colour;
  return low === null || high === null
    ? { state: 'known', value, at }
    : { state: 'known', value, at, range: { low, high } };
}

export const gelNames = (gels: readonly Gel[] | null): readonly string[] =>
  gels?.map(({ name }) => name) ?? [];

/** The colour that a shot sets, where it sets one. */
export const setColourOf = (colour: Colour | undefined): Colour | undefined =>
  colour !== undefined && ifKnown(colour) !== undefined ? colour : undefined;
