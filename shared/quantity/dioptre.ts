/** Power of a close-up lens in dioptres, 1/m; converging only. */
import { later } from '../words/message.ts';
import type { Dioptre } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';

const UNITS = ['dpt', 'dioptres', 'dioptre', 'diopters', 'diopter', 'dptr', 'D'];

export const dioptre: QuantityKind<Dioptre> = compoundKind<Dioptre>({
  id: 'dioptre',
  title: later`power in dioptres`,
  units: ['dpt'],
  unitSpellings: UNITS,
  examples: ['2 dpt', '4 dpt'],
  body: `(${POSITIVE})${GAP}(?:${UNITS.join('|')})`,
  read: ([number = '']) => ({ value: readNumber(number) as Dioptre, usual: `${number} dpt` }),
  print: (value) => `${shortest(value)} dpt`,
});
