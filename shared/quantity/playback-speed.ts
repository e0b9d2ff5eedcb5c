/**
 * Speed of a cut against real time, inside as fractions: one speed, or a ramp from one to another,
 * linear in the time of the edit. Unlike other ranges a ramp has a direction: 100 to 25 % slows.
 */
import { later } from '../words/message.ts';
import type { Fraction, Range } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest } from './number.ts';
import { TO } from './unit-range.ts';

const phrase = (value: Range<Fraction>, digits: (n: number) => string): string =>
  value.from === value.to
    ? `${digits(value.to * 100)} %`
    : `${digits(value.from * 100)} to ${digits(value.to * 100)} %`;

export const playbackSpeed: QuantityKind<Range<Fraction>> = compoundKind<Range<Fraction>>({
  id: 'playback-speed',
  title: later`playback speed`,
  units: ['%'],
  unitSpellings: ['%', 'percent', 'per cent'],
  examples: ['50 %', '100 to 25 %'],
  body: `(?:(${POSITIVE})${GAP}%?${TO})?(${POSITIVE})${GAP}(?:%|percent|per cent)`,
  read([first, second = '']) {
    const to = (readNumber(second) / 100) as Fraction;
    const from = first === undefined ? to : ((readNumber(first) / 100) as Fraction);
    return { value: { from, to }, usual: from === to ? `${second} %` : `${first} to ${second} %` };
  },
  print: (value) => phrase(value, shortest),
});
