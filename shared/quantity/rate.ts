/**
 * Frame rates as exact fractions. The trade writes 29.97 for 30000/1001; so do plans, and it is
 * that fraction that is meant (SMPTE ST 12-1 counts by it).
 */
import { later } from '../words/message.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, shortest } from './number.ts';
import { fromDecimal, type Rational, rational, toNumber } from './rational.ts';

/** Decimal spellings of the rates that run at 1000/1001 of a whole one. */
const SLOWED: Readonly<Record<string, number>> = {
  '23.976': 24000,
  '23.98': 24000,
  '29.97': 30000,
  '47.952': 48000,
  '47.95': 48000,
  '59.94': 60000,
  '119.88': 120000,
  '239.76': 240000,
};

const UNITS = ['fps', 'FPS', 'f/s', 'frames/s', 'frames per second', 'p'];

function print(value: Rational): string {
  const usual = Object.entries(SLOWED).find(([, n]) => value.d === 1001 && value.n === n);
  if (usual) return `${usual[0]} fps`;
  // A part of 1001 as divisor (1000/91) has no end as a decimal, and is written over 1001.
  return value.d > 1 && 1001 % value.d === 0
    ? `${value.n * (1001 / value.d)}/1001 fps`
    : `${shortest(toNumber(value))} fps`;
}

/** No rate is told apart by more; each further digit would make the fraction's terms longer. */
const nineDecimals = (decimal: string): string => decimal.replace(/(\.[0-9]{9})[0-9]+$/, '$1');

export const rate: QuantityKind<Rational> = compoundKind<Rational>({
  id: 'rate',
  title: later`frames per second`,
  units: ['fps'],
  unitSpellings: UNITS,
  examples: ['50 fps', '29.97 fps'],
  body: `(?:([1-9][0-9]{3,5})/1001|(${POSITIVE}))${GAP}(?:${UNITS.join('|')})`,
  read([over1001, decimal = '']) {
    const slowed = SLOWED[decimal.replace(/(\.[0-9]*?)0+$/, '$1')];
    const value =
      over1001 !== undefined
        ? rational(Number(over1001), 1001)
        : slowed
          ? rational(slowed, 1001)
          : fromDecimal(nineDecimals(decimal));
    return { value, usual: over1001 === undefined ? `${decimal} fps` : print(value) };
  },
  print,
});
