/** Lengths, inside in millimetres. 1 in = 25.4 mm exactly (international inch). */
import { later } from '../words/message.ts';
import type { Mm, Range } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind, type Unit } from './scalar.ts';
import { unitRange } from './unit-range.ts';

export const LENGTH_UNITS: readonly Unit[] = [
  { usual: 'mm', also: ['MM', 'millimetre', 'millimetres', 'millimeter', 'millimeters'] },
  { usual: 'cm', also: ['centimetre', 'centimetres', 'centimeter', 'centimeters'], times: 10 },
  { usual: 'm', also: ['metre', 'metres', 'meter', 'meters'], times: 1000 },
  {
    usual: 'um',
    also: ['\u00b5m', '\u03bcm', 'micrometre', 'micrometer', 'micron', 'microns'],
    over: 1000,
  },
  { usual: 'in', also: ['inch', 'inches', '"', '\u2033'], times: 25.4 },
  { usual: 'ft', also: ['foot', 'feet'], times: 304.8 },
];

const likelyUnits = (value: number): readonly string[] =>
  value < 5 && !Number.isInteger(value) ? ['mm', 'm', 'in'] : ['mm', 'cm', 'in'];

const common = { units: LENGTH_UNITS, likelyUnits };

export const length: QuantityKind<Mm> = scalarKind<Mm>({
  ...common,
  id: 'length',
  title: later`length`,
  sign: 'positive',
  examples: ['200 mm', '0.85 m', '7.9 in'],
});

export const lengthOrZero: QuantityKind<Mm> = scalarKind<Mm>({
  ...common,
  id: 'length-or-zero',
  title: later`length or 0 mm`,
  sign: 'zero-up',
  examples: ['0 mm', '20 mm'],
});

/** A distance along an axis from a named place; negative is the other way. */
export const offset: QuantityKind<Mm> = scalarKind<Mm>({
  ...common,
  id: 'offset',
  title: later`distance, to either side`,
  sign: 'any',
  examples: ['180 mm', '-20 mm'],
});

export const lengthRange: QuantityKind<Range<Mm>> = unitRange<Mm>({
  id: 'length-range',
  title: later`two lengths`,
  units: LENGTH_UNITS,
  examples: ['20 to 35 mm', '0.85 to 1.2 m'],
  single: false,
});
