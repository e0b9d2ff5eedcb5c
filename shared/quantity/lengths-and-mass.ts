/** Lengths and what is made of them, inside in millimetres; films in nanometres; mass in kilograms. */
import { later } from '../words/message.ts';
import type { Kg, Mm, Nm, Range } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';
import { scalarKind } from './scalar.ts';
import { inward, outward, spellings, type Unit, unitOf, unitsPattern } from './unit.ts';
import { unitRange } from './unit-range.ts';
import { wordOr } from './word-or.ts';

/** Lengths, inside in millimetres. 1 in = 25.4 mm exactly (international inch). */
const LENGTH_UNITS: readonly Unit[] = [
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

/** Who works in inches writes them: a bare number is one of a ruler or of a focus ring. */
const likelyLengthUnits = (value: number): readonly string[] =>
  value < 5 && !Number.isInteger(value) ? ['mm', 'm'] : ['mm', 'cm'];

const commonOfLengths = { units: LENGTH_UNITS, likelyUnits: likelyLengthUnits };

export const length: QuantityKind<Mm> = scalarKind<Mm>({
  ...commonOfLengths,
  id: 'length',
  title: later`length`,
  sign: 'positive',
  examples: ['200 mm', '0.85 m', '7.9 in'],
});

export const lengthOrZero: QuantityKind<Mm> = scalarKind<Mm>({
  ...commonOfLengths,
  id: 'length-or-zero',
  title: later`length or 0 mm`,
  sign: 'zero-up',
  examples: ['0 mm', '20 mm'],
});

/** A distance along an axis from a named place; negative is the other way. */
export const offset: QuantityKind<Mm> = scalarKind<Mm>({
  ...commonOfLengths,
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

/** Where the focus ring stands: an end of its travel, or the distance it is set to. */
export const ring: QuantityKind<Mm | 'closest' | 'infinity'> = wordOr(
  {
    id: 'ring',
    title: later`setting of the focus ring`,
    words: { closest: ['nearest'], infinity: ['\u221e', 'endless'] },
    examples: ['closest', 'infinity', '0.85 m'],
  },
  length,
);

/** Two sides, width first, in millimetres: `36 x 24 mm`. */
interface Size {
  readonly width: Mm;
  readonly height: Mm;
}

export const BY = `${GAP}(?:x|X|\u00d7|\\*|by)${GAP}`;
const SIDE_UNIT = `(${unitsPattern(LENGTH_UNITS)})`;

export const size: QuantityKind<Size> = compoundKind<Size>({
  id: 'size',
  title: later`width x height`,
  units: LENGTH_UNITS.map((unit) => unit.usual),
  unitSpellings: spellings(LENGTH_UNITS),
  examples: ['36 x 24 mm', '600 x 400 mm'],
  body: `(${POSITIVE})${GAP}${SIDE_UNIT}?${BY}(${POSITIVE})${GAP}${SIDE_UNIT}`,
  read([width = '', widthUnit, height = '', heightUnit = '']) {
    const unit = unitOf(LENGTH_UNITS, heightUnit)!;
    const first = (widthUnit ? unitOf(LENGTH_UNITS, widthUnit) : undefined) ?? unit;
    const value = {
      width: inward(readNumber(width), first) as Mm,
      height: inward(readNumber(height), unit) as Mm,
    };
    const widthText = first === unit ? width : shortest(outward(value.width, unit));
    return { value, usual: `${widthText} x ${height} ${unit.usual}` };
  },
  likelyUnits: () => ['mm', 'cm'],
  print(value, as = 'mm') {
    const unit = unitOf(LENGTH_UNITS, as) ?? LENGTH_UNITS[0]!;
    const [width, height] = [outward(value.width, unit), outward(value.height, unit)];
    return `${shortest(width)} x ${shortest(height)} ${unit.usual}`;
  },
});

/** Thickness of a film, or the range it drains through, in nanometres. */
export const thicknessRange: QuantityKind<Range<Nm>> = unitRange<Nm>({
  id: 'thickness-range',
  title: later`film thickness`,
  units: [
    { usual: 'nm', also: ['NM', 'nanometre', 'nanometres', 'nanometer', 'nanometers'] },
    { usual: 'um', also: ['\u00b5m', '\u03bcm'], times: 1000 },
  ],
  examples: ['80 to 700 nm', '300 nm'],
  single: true,
  likelyUnits: (value) => (value < 10 ? ['um', 'nm'] : ['nm']),
});

/** Mass, inside in kilograms. 1 lb = 0.45359237 kg exactly; 16 oz to the lb. */
export const mass: QuantityKind<Kg> = scalarKind<Kg>({
  id: 'mass',
  title: later`mass`,
  sign: 'positive',
  units: [
    { usual: 'kg', also: ['Kg', 'KG', 'kilogram', 'kilograms'] },
    { usual: 'g', also: ['gram', 'grams'], over: 1000 },
    { usual: 'lb', also: ['lbs', 'pound', 'pounds'], times: 0.45359237 },
    { usual: 'oz', also: ['ounce', 'ounces'], times: 0.028349523125 },
  ],
  examples: ['1.5 kg', '60 g'],
  likelyUnits: (value) => (value < 20 ? ['kg', 'g', 'lb'] : ['g', 'kg']),
});
