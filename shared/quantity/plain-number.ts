/** Numbers without a unit. */
import { later } from '../words/message.ts';
import type { Count, Ratio } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { POSITIVE, readNumber, shortest, WHOLE } from './number.ts';

export const ratio: QuantityKind<Ratio> = compoundKind<Ratio>({
  id: 'ratio',
  title: later`number without a unit`,
  units: [],
  examples: ['0.8', '1.33'],
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
