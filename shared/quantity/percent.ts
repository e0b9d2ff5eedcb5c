/** Shares of a whole, inside as fractions: 50 % is 0.5. */
import { later } from '../words/message.ts';
import type { Fraction } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, numberBelow, readNumber, shortest } from './number.ts';

export const PERCENT_UNITS = ['%', 'percent', 'per cent', 'pc'];
/** Source of a pattern for 0 to 100, without groups of its own. */
export const SHARE = `[+]?${numberBelow(2, '[0-9]|[1-9][0-9]', '100(?:\\.0{1,40})?', '(?:1(?:\\.0{1,20})?[eE][+]?0{0,2}2|10(?:\\.0{1,20})?[eE][+]?0{0,2}1)')}`;

export const percent: QuantityKind<Fraction> = compoundKind<Fraction>({
  id: 'percent',
  title: later`percentage`,
  units: ['%'],
  unitSpellings: PERCENT_UNITS,
  examples: ['50 %', '2 %'],
  body: `(${SHARE})${GAP}(?:${PERCENT_UNITS.join('|')})`,
  read: ([number = '']) => ({
    value: (readNumber(number) / 100) as Fraction,
    usual: `${number} %`,
  }),
  print: (value) => `${shortest(value * 100)} %`,
});
