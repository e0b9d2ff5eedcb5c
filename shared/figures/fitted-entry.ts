/**
 * Lights, converters, close-up lenses and bodies as their benches show them to be: what the rows say
 * takes the place of what is written of them, wherever they are used.
 */
import type { Likely } from '../lens-fit/most-likely.ts';
import { valuesAt } from '../lens-fit/most-likely.ts';
import type { Field } from '../plan/field.ts';
import type { Group } from '../plan/generated/names.ts';
import type { Body, CloseUp, Converter, Light } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import type { Bench } from './bench.ts';
import { bodyBench } from './body-bench.ts';
import { CONSTANTS, type Constants } from './constants.ts';
import { type EntryBench, likelyOf } from './entry-bench.ts';
import { type Figure, known } from './figure.ts';
import { closeUpBench, converterBench } from './glass-bench.ts';
import { lightBench } from './light-bench.ts';
import type { Named } from './named.ts';

/** What the bench of an entry says, whatever it is of; undefined: it has none. */
export function entryBench(group: Group, fields: object, incident: number): EntryBench | undefined {
  switch (group) {
    case 'lights':
      return lightBench(fields as Light, incident);
    case 'converters':
      return converterBench(fields as Converter);
    case 'close-up-lenses':
      return closeUpBench(fields as CloseUp);
    case 'bodies':
      return bodyBench(fields as Body);
    default:
      return undefined;
  }
}

const fits = new WeakMap<EntryBench, Likely>();

/** undefined: nothing in it can be used. */
export function fitOf(bench: EntryBench): Likely | undefined {
  if (bench.values.length === 0) return undefined;
  const kept = fits.get(bench) ?? likelyOf(bench);
  fits.set(bench, kept);
  return kept;
}

/** How the entry stands along the axes of what its bench leaves uncertain. */
const standsOf = ({ entryStands }: Constants, { file, entry }: Named<object>) =>
  entryStands.find((one) => one.file === file && one.entry === entry)?.stands ?? [];

/** What is most likely true of an entry's unknowns; undefined: it has no bench that says anything. */
function unknownsOf(entry: Named<object>, constants: Constants) {
  const bench = entryBench(entry.group, writtenOf(entry), constants.incident);
  const fit = bench && fitOf(bench);
  return fit && valuesAt(fit, standsOf(constants, entry));
}

/** The fields of an entry as they are written. */
export const writtenOf = <T extends object>({ fields, written }: Named<T>): T => written ?? fields;

const usual = new WeakMap<object, Named<object>>();

/** The entry with what its bench says of it; without a bench, the entry itself. */
export function fittedEntry<T extends object>(entry: Named<T>, constants: Constants): Named<T> {
  const { group } = entry;
  if (group !== 'lights' && group !== 'converters' && group !== 'close-up-lenses') return entry;
  const written = writtenOf(entry);
  if ((written as { readonly bench: Field<unknown> }).bench.state !== 'known') return entry;
  const isUsual =
    constants.incident === CONSTANTS.incident && standsOf(constants, entry).length === 0;
  const kept = isUsual ? usual.get(written) : undefined;
  if (kept && kept.name === entry.name) return kept as Named<T>;
  const unknowns = unknownsOf(entry, constants);
  if (!unknowns) return entry;
  const fields = { ...written, ...saidBy(group, written, unknowns, constants) };
  const fitted: Named<T> = { ...entry, fields, written };
  if (isUsual) usual.set(written, fitted);
  return fitted;
}

function saidBy(
  group: 'lights' | 'converters' | 'close-up-lenses',
  written: object,
  unknowns: readonly number[],
  { incident }: Constants,
): object {
  const [main, loss] = unknowns as [number, number | undefined];
  const { at } = (written as { readonly bench: Field<unknown> }).bench;
  const glass = loss === undefined ? {} : { loss: said(loss, at) };
  if (group === 'converters') return { factor: said(main, at), ...glass };
  if (group === 'close-up-lenses') return { power: said(main, at), ...glass };
  const { face, luminance } = lightBench(written as Light, incident)!.at(unknowns);
  const light = written as Light;
  const throughGlass =
    light.reading.state === 'known' &&
    light.reading.value.through.state === 'known' &&
    light.reading.value.through.value !== 'meter';
  return {
    luminance: said(luminance, at),
    illuminance: none(light.illuminance.at),
    'illuminance-distance': none(light['illuminance-distance'].at),
    ...(!throughGlass && { reading: none(light.reading.at) }),
    ...(face.shape === 'round'
      ? { diameter: said(face.diameterMm, at) }
      : { 'emitting-size': said({ width: face.widthMm, height: face.heightMm }, at) }),
  };
}

const said = <T>(value: T, at: Place): Field<T> => ({ state: 'known', value, at });
const none = (at: Place): Field<never> => ({ state: 'missing', at });

/**
 * Stops by which the pictures of the shot's body are brighter than its ISO setting says; 0 where
 * nobody measured it.
 */
export function isoOffsetOf({ body, constants }: Bench): Figure<number> {
  const [offset] = (body && unknownsOf(body, constants)) ?? [];
  return offset === undefined ? known(0) : known(offset, [body!.fields.bench.at]);
}
