/** How a body records: shutter, ISO speed, frames, pixels, bits and bytes. */
import { later } from '../words/message.ts';
import type { BitsPerSec, Bytes, Iso, Rad, Sec } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { BY } from './lengths-and-mass.ts';
import { DEGREE, degrees, TURN } from './movement.ts';
import { GAP, NOT_ZERO, POSITIVE, readNumber, shortest, WHOLE } from './number.ts';
import { fromDecimal, type Rational, rational, toNumber } from './rational.ts';
import { scalarKind } from './scalar.ts';
import { wordOr } from './word-or.ts';

/**
 * Shutter, as the time it is open or as the angle of a rotary shutter: 360° is the whole frame
 * time. `1/50 s` is 0.02 s exactly as written, not the 2^(k/3) value it stands for.
 */
export type Shutter =
  | { readonly kind: 'time'; readonly seconds: Sec }
  | { readonly kind: 'angle'; readonly angle: Rad };

const SECONDS = '(?:s|sec|secs|second|seconds)';
/** Above 0, up to the whole frame time. */
const OPEN = `[+]?${NOT_ZERO}${TURN}`;

/** A plain time as 1/n s where that is what it is, in decimals otherwise. */
function printTime(seconds: number): string {
  const inverse = 1 / seconds;
  const whole = Math.abs(inverse - Math.round(inverse)) < 1e-9 * inverse;
  return seconds < 1 && whole ? `1/${Math.round(inverse)} s` : `${shortest(seconds)} s`;
}

export const shutter: QuantityKind<Shutter> = compoundKind<Shutter>({
  id: 'shutter',
  title: later`shutter time or angle`,
  units: ['s', 'ms', 'deg'],
  unitSpellings: ['s', 'ms', 'deg', 'sec', ...DEGREE],
  examples: ['1/50 s', '0.5 s', '180 deg'],
  body: `1/(${POSITIVE})(?:${GAP}${SECONDS})?|(${POSITIVE})${GAP}(?:${SECONDS}|(ms))|(${OPEN})${GAP}(?:${DEGREE.join('|')})`,
  read([inverse, number, milli, angle]) {
    if (angle !== undefined) {
      const value = { kind: 'angle', angle: ((readNumber(angle) * Math.PI) / 180) as Rad } as const;
      return { value, usual: `${angle} deg` };
    }
    const seconds =
      inverse !== undefined
        ? 1 / readNumber(inverse)
        : milli
          ? readNumber(number ?? '') / 1000
          : readNumber(number ?? '');
    const value = { kind: 'time', seconds: seconds as Sec } as const;
    return {
      value,
      usual: inverse !== undefined ? `1/${inverse} s` : `${number} ${milli ? 'ms' : 's'}`,
    };
  },
  likelyUnits: (value) => (value > 12 && value <= 360 ? ['deg', 'ms'] : ['s', 'ms']),
  repairs: (text) => (/^[0-9.]+$/.test(text) && Number(text) > 12 ? [`1/${text} s`] : []),
  print: (value) =>
    value.kind === 'angle' ? `${shortest(degrees(value.angle))} deg` : printTime(value.seconds),
});

/** Arithmetic ISO speed: a plain number. */
export const iso: QuantityKind<Iso> = compoundKind<Iso>({
  id: 'iso',
  title: later`ISO speed`,
  units: [],
  examples: ['1600', '400'],
  bare: 'integer',
  body: `(?:(?:ISO|iso|Iso)${GAP})?(${WHOLE})`,
  read: ([number = '']) => ({ value: Number(number) as Iso, usual: number }),
  likelyUnits: () => [],
  repairs: (text) => [text.replace(/[^0-9.]/g, '').replace(/\.0*$/, '')],
  print: (value) => String(Math.round(value)),
});

export const isoOrAuto: QuantityKind<Iso | 'auto'> = wordOr(
  {
    id: 'iso-or-auto',
    title: later`ISO speed or auto`,
    words: { auto: ['AUTO', 'automatic'] },
    examples: ['1600', 'auto'],
  },
  iso,
);

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

const RATE_UNITS = ['fps', 'FPS', 'f/s', 'frames/s', 'frames per second', 'p'];

function printRate(value: Rational): string {
  const usual = Object.entries(SLOWED).find(([, n]) => value.d === 1001 && value.n === n);
  if (usual) return `${usual[0]} fps`;
  // A part of 1001 as divisor (1000/91) has no end as a decimal, and is written over 1001.
  return value.d > 1 && 1001 % value.d === 0
    ? `${value.n * (1001 / value.d)}/1001 fps`
    : `${shortest(toNumber(value))} fps`;
}

/** No rate is told apart by more; each further digit would make the fraction's terms longer. */
const nineDecimals = (decimal: string): string => decimal.replace(/(\.[0-9]{9})[0-9]+$/, '$1');

/**
 * Frame rates as exact fractions. The trade writes 29.97 for 30000/1001; so do plans, and it is
 * that fraction that is meant (SMPTE ST 12-1 counts by it).
 */
export const rate: QuantityKind<Rational> = compoundKind<Rational>({
  id: 'rate',
  title: later`frames per second`,
  units: ['fps'],
  unitSpellings: RATE_UNITS,
  examples: ['50 fps', '29.97 fps'],
  body: `(?:([1-9][0-9]{3,5})/1001|(${POSITIVE}))${GAP}(?:${RATE_UNITS.join('|')})`,
  read([over1001, decimal = '']) {
    const slowed = SLOWED[decimal.replace(/(\.[0-9]*?)0+$/, '$1')];
    const value =
      over1001 !== undefined
        ? rational(Number(over1001), 1001)
        : slowed
          ? rational(slowed, 1001)
          : fromDecimal(nineDecimals(decimal));
    return { value, usual: over1001 === undefined ? `${decimal} fps` : printRate(value) };
  },
  print: printRate,
});

/** A picture's size in pixels, width first: `1920 x 1080`. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
}

const SIDE = '[1-9][0-9]{0,5}';
const printPixels = (value: Pixels): string => `${value.width} x ${value.height}`;

export const pixels: QuantityKind<Pixels> = compoundKind<Pixels>({
  id: 'pixels',
  title: later`size in pixels`,
  units: [],
  unitSpellings: [],
  examples: ['1920 x 1080', '3840 x 2160'],
  body: `(${SIDE})${BY}(${SIDE})(?:${GAP}(?:px|pixels))?`,
  read([width, height]) {
    const value = { width: Number(width), height: Number(height) };
    return { value, usual: printPixels(value) };
  },
  likelyUnits: () => [],
  print: printPixels,
});

/** Bit rate of a recording, inside in bits per second; decimal prefixes. */
export const bitrate: QuantityKind<BitsPerSec> = scalarKind<BitsPerSec>({
  id: 'bitrate',
  title: later`bit rate`,
  sign: 'positive',
  units: [
    { usual: 'Mb/s', also: ['Mbit/s', 'Mbps', 'mbps', 'Mbits/s'], times: 1e6 },
    { usual: 'kb/s', also: ['kbit/s', 'kbps', 'Kb/s', 'Kbps'], times: 1e3 },
    { usual: 'Gb/s', also: ['Gbit/s', 'Gbps'], times: 1e9 },
    { usual: 'MB/s', also: ['Mbyte/s'], times: 8e6 },
  ],
  examples: ['60 Mb/s', '1.2 Gb/s'],
});

/** Capacity of cards and memories, inside in bytes; decimal prefixes, as cards are labelled. */
export const capacity: QuantityKind<Bytes> = scalarKind<Bytes>({
  id: 'capacity',
  title: later`capacity`,
  sign: 'positive',
  units: [
    { usual: 'GB', also: ['gb', 'Gb', 'gigabytes'], times: 1e9 },
    { usual: 'TB', also: ['tb', 'terabytes'], times: 1e12 },
    { usual: 'MB', also: ['mb', 'megabytes'], times: 1e6 },
  ],
  examples: ['128 GB', '1 TB'],
});
