/** What is marked on a lens, a converter and a close-up lens. */
import { later } from '../words/message.ts';
import type { Dioptre, Factor, FNumber, Magnification, Range } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';
import { roughForm } from './rough.ts';
import { scalarKind } from './scalar.ts';
import { TO } from './unit-range.ts';

const F = `(?:[fF\u0192]${GAP}/?${GAP})`;

const fNumberRepairs = (text: string): string[] => [
  `f/${text.replace(/^[^0-9]*/, '')}`,
  `f/${text.replace(/^1\s*[:/]\s*/, '')}`,
];

/** f-numbers as marked on a lens, used as written: f/22 is 22. */
export const fNumber: QuantityKind<FNumber> = compoundKind<FNumber>({
  id: 'f-number',
  title: later`f-number`,
  units: ['f/'],
  examples: ['f/16', 'f/5.6'],
  body: `${F}(${POSITIVE})`,
  read: ([number = '']) => ({ value: readNumber(number) as FNumber, usual: `f/${number}` }),
  likelyUnits: () => [],
  repairs: fNumberRepairs,
  print: (value) => `f/${shortest(value)}`,
});

/** An f-number that was measured: a plain number, or written as the marked ones are. */
export const effectiveFNumber: QuantityKind<FNumber> = compoundKind<FNumber>({
  id: 'effective-f-number',
  title: later`effective f-number`,
  units: [],
  examples: ['9.6', 'f/9.6'],
  rough: roughForm<FNumber>({ sign: 'positive', units: [] }),
  bare: 'number',
  body: `(${POSITIVE})|${F}(${POSITIVE})`,
  read: ([plain, marked = '']) =>
    plain === undefined
      ? { value: readNumber(marked) as FNumber, usual: `f/${marked}` }
      : { value: readNumber(plain) as FNumber, usual: plain },
  likelyUnits: () => [],
  repairs: (text) => [text.replace(/[^0-9.]/g, ''), ...fNumberRepairs(text)],
  print: (value) => shortest(value),
});

/** T-numbers as marked on a lens: T3.1. */
export const tStop: QuantityKind<FNumber> = compoundKind<FNumber>({
  id: 't-stop',
  title: later`T-number`,
  units: ['T'],
  examples: ['T3.1', 'T4'],
  body: `[tT]${GAP}/?${GAP}(${POSITIVE})`,
  read: ([number = '']) => ({ value: readNumber(number) as FNumber, usual: `T${number}` }),
  likelyUnits: () => [],
  repairs: (text) => [`T${text.replace(/^[^0-9]*/, '')}`],
  print: (value) => `T${shortest(value)}`,
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
  repairs: fNumberRepairs,
  print: (value) => `f/${shortest(value.from)} to ${shortest(value.to)}`,
});

/** Magnification: the image's size on the sensor over the subject's. `1:2` is 0.5x. */
export const magnification: QuantityKind<Magnification> = compoundKind<Magnification>({
  id: 'magnification',
  title: later`magnification`,
  units: ['x'],
  unitSpellings: ['x', 'X', '\u00d7'],
  examples: ['0.5x', '1.5x'],
  rough: roughForm<Magnification>({
    sign: 'positive',
    units: [{ usual: 'x', also: ['X', '\u00d7'], tight: true }],
  }),
  body: `(${POSITIVE})${GAP}(?:x|X|\u00d7)|(${POSITIVE})${GAP}:${GAP}(${POSITIVE})`,
  read([times, image = '', subject = '']) {
    if (times !== undefined) {
      return { value: readNumber(times) as Magnification, usual: `${times}x` };
    }
    const value = (readNumber(image) / readNumber(subject)) as Magnification;
    return { value, usual: `${usualRatio(value)}x` };
  },
  likelyUnits: () => ['x'],
  print: (value) => `${shortest(value)}x`,
});

/** A ratio such as 1:3 has no end in decimals: five digits are more than any ring is marked to. */
const usualRatio = (value: number): string => {
  const exact = shortest(value);
  return exact.length <= 8 ? exact : shortest(Number(value.toPrecision(5)));
};

/** The factor of a converter: `2x`. */
export const factor: QuantityKind<Factor> = scalarKind<Factor>({
  id: 'factor',
  title: later`factor`,
  sign: 'positive',
  units: [{ usual: 'x', also: ['X', '\u00d7'], tight: true }],
  examples: ['2x', '1.4x'],
});

const DIOPTRE_UNITS = ['dpt', 'dioptres', 'dioptre', 'diopters', 'diopter', 'dptr', 'D'];

/** Power of a close-up lens in dioptres, 1/m; converging only. */
export const dioptre: QuantityKind<Dioptre> = compoundKind<Dioptre>({
  id: 'dioptre',
  title: later`power in dioptres`,
  units: ['dpt'],
  unitSpellings: DIOPTRE_UNITS,
  examples: ['2 dpt', '4 dpt'],
  rough: roughForm<Dioptre>({
    sign: 'positive',
    units: [{ usual: 'dpt', also: DIOPTRE_UNITS.slice(1) }],
  }),
  body: `(${POSITIVE})${GAP}(?:${DIOPTRE_UNITS.join('|')})`,
  read: ([number = '']) => ({ value: readNumber(number) as Dioptre, usual: `${number} dpt` }),
  print: (value) => `${shortest(value)} dpt`,
});
