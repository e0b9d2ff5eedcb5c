/** Angles, inside in radians; at most a turn to either side. */
import { later } from '../words/message.ts';
import type { Rad } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, numberBelow, readNumber, shortest, usualNumber } from './number.ts';

/** Understood spellings of the degree. */
export const DEGREE: readonly string[] = ['degrees', 'degree', 'deg', '\u00b0'];

export const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** Degrees from 0 to 360, without sign. */
export const TURN = numberBelow(
  2,
  '[0-9]|[1-9][0-9]|[12][0-9]{2}|3[0-5][0-9]',
  '360(?:\\.0{1,40})?',
  '(?:[12](?:\\.[0-9]{1,20})?|3(?:\\.[0-5][0-9]{0,19})?|3\\.60{0,19})[eE][+]?0{0,2}2',
  '(?:(?:[12][0-9]|3[0-5])(?:\\.[0-9]{1,20})?|36(?:\\.0{1,20})?)[eE][+]?0{0,2}1',
);

export const angle: QuantityKind<Rad> = compoundKind<Rad>({
  id: 'angle',
  title: later`angle`,
  units: ['deg'],
  unitSpellings: ['deg', ...DEGREE],
  examples: ['4 deg', '-12.5 deg'],
  body: `([-\u2212+]?${TURN})${GAP}(?:${DEGREE.join('|')})`,
  read([number = '']) {
    const usual = usualNumber(number);
    return { value: ((readNumber(number) * Math.PI) / 180) as Rad, usual: `${usual} deg` };
  },
  print: (value) => `${shortest(degrees(value))} deg`,
});
