/** Angles, and how fast something goes or turns: inside in radians, mm/s and rad/s. */
import { later } from '../words/message.ts';
import type { MmPerSec, Rad, RadPerSec } from './brands.ts';
import { compoundKind } from './compound.ts';
import { type Either, eitherKind } from './either.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, numberBelow, readNumber, shortest, usualNumber } from './number.ts';
import { roughForm } from './rough.ts';
import { scalarKind } from './scalar.ts';

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

/** Angles, inside in radians; at most a turn to either side. */
export const angle: QuantityKind<Rad> = compoundKind<Rad>({
  id: 'angle',
  title: later`angle`,
  units: ['deg'],
  unitSpellings: ['deg', ...DEGREE],
  examples: ['4 deg', '-12.5 deg'],
  rough: roughForm<Rad>({
    sign: 'any',
    units: [{ usual: 'deg', also: DEGREE, times: Math.PI, over: 180 }],
    most: 2 * Math.PI,
  }),
  body: `([-\u2212+]?${TURN})${GAP}(?:${DEGREE.join('|')})`,
  read([number = '']) {
    const usual = usualNumber(number);
    return { value: ((readNumber(number) * Math.PI) / 180) as Rad, usual: `${usual} deg` };
  },
  print: (value) => `${shortest(degrees(value))} deg`,
});

/** Speed along a line, inside in mm/s. */
export const speed: QuantityKind<MmPerSec> = scalarKind<MmPerSec>({
  id: 'speed',
  title: later`speed`,
  sign: 'zero-up',
  units: [
    { usual: 'mm/s', also: ['mm/sec', 'MM/s'] },
    { usual: 'cm/s', also: ['cm/sec'], times: 10 },
    { usual: 'm/s', also: ['m/sec'], times: 1000 },
    { usual: 'in/s', also: ['in/sec'], times: 25.4 },
    { usual: 'mm/min', times: 1, over: 60 },
    { usual: 'mm/h', times: 1, over: 3600 },
  ],
  examples: ['3 mm/s', '0.5 mm/s'],
});

/** Speed of turning, inside in radians per second. */
export const turn: QuantityKind<RadPerSec> = scalarKind<RadPerSec>({
  id: 'turn',
  title: later`speed of turning`,
  sign: 'positive',
  units: [
    { usual: 'deg/s', also: ['\u00b0/s', 'degrees/s', 'deg/sec'], times: Math.PI, over: 180 },
    { usual: 'rpm', also: ['RPM', '1/min'], times: 2 * Math.PI, over: 60 },
  ],
  examples: ['1.5 deg/s', '12 deg/s'],
});

const SPEEDS = { line: speed, turn } as const;

type MoveSpeed = Either<typeof SPEEDS>;

/** Speed of a move: along a line, or of turning. */
export const moveSpeed: QuantityKind<MoveSpeed> = eitherKind(
  {
    id: 'move-speed',
    title: later`speed of a move`,
    examples: ['2 mm/s', '3 deg/s'],
    likelyUnits: ['mm/s', 'deg/s'],
  },
  SPEEDS,
);
