/** Two sides, width first, in millimetres: `36 x 24 mm`. */
import { later } from '../words/message.ts';
import type { Mm } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { LENGTH_UNITS } from './length.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';
import { inward, outward, spellings, unitOf, unitsPattern } from './scalar.ts';

export interface Size {
  readonly width: Mm;
  readonly height: Mm;
}

export const BY = `${GAP}(?:x|X|\u00d7|\\*|by)${GAP}`;
const UNIT = `(${unitsPattern(LENGTH_UNITS)})`;

export const size: QuantityKind<Size> = compoundKind<Size>({
  id: 'size',
  title: later`width x height`,
  units: LENGTH_UNITS.map((unit) => unit.usual),
  unitSpellings: spellings(LENGTH_UNITS),
  examples: ['36 x 24 mm', '600 x 400 mm'],
  body: `(${POSITIVE})${GAP}${UNIT}?${BY}(${POSITIVE})${GAP}${UNIT}`,
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
  likelyUnits: () => ['mm', 'cm', 'in'],
  print(value, as = 'mm') {
    const unit = unitOf(LENGTH_UNITS, as) ?? LENGTH_UNITS[0]!;
    const [width, height] = [outward(value.width, unit), outward(value.height, unit)];
    return `${shortest(width)} x ${shortest(height)} ${unit.usual}`;
  },
});
