/** Numbers without a unit, and shares of a whole. */
import { later } from '../words/message.ts';
import type { Count, Fraction, Ratio } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, numberBelow, POSITIVE, readNumber, shortest, WHOLE } from './number.ts';
import { roughForm } from './rough.ts';

/** Numbers without a unit. */
export const ratio: QuantityKind<Ratio> = compoundKind<Ratio>({
  id: 'ratio',
  title: later`number without a unit`,
  units: [],
  examples: ['0.8', '1.33'],
  rough: roughForm<Ratio>({ sign: 'positive', units: [] }),
  bare: 'number',
  body: `(${POSITIVE})`,
  read: ([number = '']) => ({ value: readNumber(number) as Ratio, usual: number }),
  likelyUnits: () => [],
  repairs: (text) => [text.replace(/[^0-9.]/g, '')],
  print: (value) => shortest(value),
});

export const count: QuantityKind<Count> = compoundKind<Count>({
  id: 'count',
  title: later`whole number`,
  units: [],
  examples: ['3', '1'],
  bare: 'integer',
  body: `(${WHOLE})`,
  read: ([number = '']) => ({ value: Number(number) as Count, usual: number }),
  likelyUnits: () => [],
  repairs: (text) => [text.replace(/[^0-9.]/g, '').replace(/\.0*$/, '')],
  print: (value) => String(Math.round(value)),
});

export const PERCENT_UNITS = ['%', 'percent', 'per cent', 'pc'];
/** Source of a pattern for 0 to 100, without groups of its own. */
export const SHARE = `[+]?${numberBelow(2, '[0-9]|[1-9][0-9]', '100(?:\\.0{1,40})?', '(?:1(?:\\.0{1,20})?[eE][+]?0{0,2}2|10(?:\\.0{1,20})?[eE][+]?0{0,2}1)')}`;

/** Shares of a whole, inside as fractions: 50 % is 0.5. */
export const percent: QuantityKind<Fraction> = compoundKind<Fraction>({
  id: 'percent',
  title: later`percentage`,
  units: ['%'],
  unitSpellings: PERCENT_UNITS,
  examples: ['50 %', '2 %'],
  rough: roughForm<Fraction>({
    sign: 'zero-up',
    units: [{ usual: '%', also: PERCENT_UNITS.slice(1), over: 100 }],
    most: 1,
  }),
  body: `(${SHARE})${GAP}(?:${PERCENT_UNITS.join('|')})`,
  read: ([number = '']) => ({
    value: (readNumber(number) / 100) as Fraction,
    usual: `${number} %`,
  }),
  print: (value) => `${shortest(value * 100)} %`,
});
