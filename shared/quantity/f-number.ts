/** f-numbers as marked on a lens, used as written: f/22 is 22. */
import { later } from '../words/message.ts';
import type { FNumber, Range } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';
import { TO } from './unit-range.ts';

const F = `(?:[fF\u0192]${GAP}/?${GAP})`;

const repairs = (text: string): string[] => [
  `f/${text.replace(/^[^0-9]*/, '')}`,
  `f/${text.replace(/^1\s*[:/]\s*/, '')}`,
];

export const fNumber: QuantityKind<FNumber> = compoundKind<FNumber>({
  id: 'f-number',
  title: later`f-number`,
  units: ['f/'],
  examples: ['f/16', 'f/5.6'],
  body: `${F}(${POSITIVE})`,
  read: ([number = '']) => ({ value: readNumber(number) as FNumber, usual: `f/${number}` }),
  likelyUnits: () => [],
  repairs,
  print: (value) => `f/${shortest(value)}`,
});

/** `from` is the lower number, the wider aperture, whichever was written first. */
export const fNumberRange: QuantityKind<Range<FNumber>> = compoundKind<Range<FNumber>>({
  id: 'f-number-range',
  title: later`range of f-numbers`,
  units: ['f/'],
  examples: ['f/4 to 32', 'f/2.8 to 22'],
  body: `${F}(${POSITIVE})${TO}${F}?(${POSITIVE})`,
  read([first = '', second = '']) {
    const [low, high] = readNumber(first) <= readNumber(second) ? [first, second] : [second, first];
    return {
      value: { from: readNumber(low) as FNumber, to: readNumber(high) as FNumber },
      usual: `f/${low} to ${high}`,
    };
  },
  likelyUnits: () => [],
  repairs,
  print: (value) => `f/${shortest(value.from)} to ${shortest(value.to)}`,
});
