/** Lengths on the timeline of the edit: in seconds, frames, or by the music in beats and bars. */
import { later } from '../words/message.ts';
import type { Beats } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest, WHOLE } from './number.ts';
import { type Unit, unitOf, unitsPattern } from './scalar.ts';
import { wordOr } from './word-or.ts';

export type TimelineUnit = 's' | 'min' | 'bars' | 'beats' | 'frames';

export interface TimelineLength {
  readonly amount: number;
  readonly unit: TimelineUnit;
}

const UNITS: readonly Unit[] = [
  { usual: 's', also: ['sec', 'secs', 'second', 'seconds'] },
  { usual: 'min', also: ['minute', 'minutes'] },
  { usual: 'bars', also: ['bar'] },
  { usual: 'beats', also: ['beat'] },
];
const FRAMES = ['frames', 'frame', 'fr'];

/** 1 beat, 2 beats. */
function phrase({ amount, unit }: TimelineLength, digits: (n: number) => string): string {
  const counted = amount === 1 && unit.endsWith('s') && unit !== 's' ? unit.slice(0, -1) : unit;
  return `${digits(amount)} ${counted}`;
}

const BODY = `(${POSITIVE})${GAP}(${unitsPattern(UNITS)})|(${WHOLE})${GAP}(?:${FRAMES.join('|')})`;
const ALL = [...UNITS.flatMap((unit) => [unit.usual, ...(unit.also ?? [])]), ...FRAMES];

function read([number = '', written = '', frames]: readonly (string | undefined)[]): {
  value: TimelineLength;
  usual: string;
} {
  const unit = frames ? 'frames' : (unitOf(UNITS, written)?.usual as TimelineUnit);
  const text = frames ?? number;
  const value = { amount: readNumber(text), unit };
  return { value, usual: phrase(value, () => text) };
}

export const timelineLength: QuantityKind<TimelineLength> = compoundKind<TimelineLength>({
  id: 'timeline-length',
  title: later`length in the edit`,
  units: ['s', 'min', 'bars', 'beats', 'frames'],
  unitSpellings: ALL,
  examples: ['2 bars', '6 beats', '4 s', '12 frames'],
  body: BODY,
  read,
  likelyUnits: (value) => (Number.isInteger(value) ? ['s', 'bars', 'beats', 'frames'] : ['s']),
  print: (value) => phrase(value, shortest),
});

export const beats: QuantityKind<Beats> = compoundKind<Beats>({
  id: 'beats',
  title: later`number of beats`,
  units: ['beats'],
  unitSpellings: ['beats', 'beat'],
  examples: ['4 beats', '3 beats'],
  body: `(${WHOLE})${GAP}beats?`,
  read: ([number = '']) => ({
    value: Number(number) as Beats,
    usual: phrase({ amount: Number(number), unit: 'beats' }, () => number),
  }),
  print: (value) => phrase({ amount: Math.round(value), unit: 'beats' }, shortest),
});

export interface Dissolve {
  readonly kind: 'dissolve';
  readonly length: TimelineLength;
}

/** How a cut begins: a plain cut, or a dissolve over a length. */
export const join: QuantityKind<Dissolve | 'cut'> = wordOr(
  { id: 'join', title: later`join`, words: { cut: [] }, examples: ['dissolve 12 frames', 'cut'] },
  compoundKind<Dissolve>({
    id: 'dissolve',
    title: later`dissolve`,
    units: ['s', 'bars', 'beats', 'frames'],
    unitSpellings: ALL,
    examples: ['dissolve 12 frames'],
    body: `[Dd]issolve {1,4}(?:${BODY})`,
    read(groups) {
      const { value, usual } = read(groups);
      return { value: { kind: 'dissolve', length: value }, usual: `dissolve ${usual}` };
    },
    likelyUnits: () => ['frames', 's'],
    repairs: (text) => [`dissolve ${text.replace(/^[^0-9]*/, '')}`],
    print: ({ length }) => `dissolve ${phrase(length, shortest)}`,
  }),
);
