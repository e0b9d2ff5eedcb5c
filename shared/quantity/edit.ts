/** Lengths, transitions and speeds in the edit, and the tempo of its music. */
import { later } from '../words/message.ts';
import type { Beats, Bpm, Fraction, Range } from './brands.ts';
import { compoundKind } from './compound.ts';
import type { QuantityKind } from './kind.ts';
import { GAP, POSITIVE, readNumber, shortest, WHOLE } from './number.ts';
import { scalarKind } from './scalar.ts';
import { type Unit, unitOf, unitsPattern } from './unit.ts';
import { TO } from './unit-range.ts';
import { wordOr } from './word-or.ts';

type TimelineUnit = 's' | 'min' | 'bars' | 'beats' | 'frames';

/** Lengths on the timeline of the edit: in seconds, frames, or by the music in beats and bars. */
export interface TimelineLength {
  readonly amount: number;
  readonly unit: TimelineUnit;
}

const TIMELINE_UNITS: readonly Unit[] = [
  { usual: 's', also: ['sec', 'secs', 'second', 'seconds'] },
  { usual: 'min', also: ['minute', 'minutes'] },
  { usual: 'bars', also: ['bar'] },
  { usual: 'beats', also: ['beat'] },
];
const FRAMES = ['frames', 'frame', 'fr'];

/** 1 beat, 2 beats. */
function lengthPhrase({ amount, unit }: TimelineLength, digits: (n: number) => string): string {
  const counted = amount === 1 && unit.endsWith('s') && unit !== 's' ? unit.slice(0, -1) : unit;
  return `${digits(amount)} ${counted}`;
}

const LENGTH_BODY = `(${POSITIVE})${GAP}(${unitsPattern(TIMELINE_UNITS)})|(${WHOLE})${GAP}(?:${FRAMES.join('|')})`;
const ALL_TIMELINE_UNITS = [
  ...TIMELINE_UNITS.flatMap((unit) => [unit.usual, ...(unit.also ?? [])]),
  ...FRAMES,
];

function readLength([number = '', written = '', frames]: readonly (string | undefined)[]): {
  value: TimelineLength;
  usual: string;
} {
  const unit = frames ? 'frames' : (unitOf(TIMELINE_UNITS, written)?.usual as TimelineUnit);
  const text = frames ?? number;
  const value = { amount: readNumber(text), unit };
  return { value, usual: lengthPhrase(value, () => text) };
}

export const timelineLength: QuantityKind<TimelineLength> = compoundKind<TimelineLength>({
  id: 'timeline-length',
  title: later`length in the edit`,
  units: ['s', 'min', 'bars', 'beats', 'frames'],
  unitSpellings: ALL_TIMELINE_UNITS,
  examples: ['2 bars', '6 beats', '4 s', '12 frames'],
  body: LENGTH_BODY,
  read: readLength,
  likelyUnits: (value) => (Number.isInteger(value) ? ['s', 'bars', 'beats', 'frames'] : ['s']),
  print: (value) => lengthPhrase(value, shortest),
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
    usual: lengthPhrase({ amount: Number(number), unit: 'beats' }, () => number),
  }),
  print: (value) => lengthPhrase({ amount: Math.round(value), unit: 'beats' }, shortest),
});

interface Dissolve {
  readonly kind: 'dissolve';
  readonly length: TimelineLength;
}

/** How a cut begins: a plain cut, or a dissolve over a length. */
export const join: QuantityKind<Dissolve | 'cut'> = wordOr(
  {
    id: 'join',
    title: later`transition`,
    words: { cut: [] },
    examples: ['dissolve 12 frames', 'cut'],
  },
  compoundKind<Dissolve>({
    id: 'dissolve',
    title: later`dissolve`,
    units: ['s', 'bars', 'beats', 'frames'],
    unitSpellings: ALL_TIMELINE_UNITS,
    examples: ['dissolve 12 frames'],
    body: `[Dd]issolve {1,4}(?:${LENGTH_BODY})`,
    read(groups) {
      const { value, usual } = readLength(groups);
      return { value: { kind: 'dissolve', length: value }, usual: `dissolve ${usual}` };
    },
    likelyUnits: () => ['frames', 's'],
    repairs: (text) => [`dissolve ${text.replace(/^[^0-9]*/, '')}`],
    print: ({ length }) => `dissolve ${lengthPhrase(length, shortest)}`,
  }),
);

/** Tempo of the music, beats per minute. */
export const tempo: QuantityKind<Bpm> = scalarKind<Bpm>({
  id: 'tempo',
  title: later`tempo`,
  sign: 'positive',
  units: [{ usual: 'bpm', also: ['BPM', 'Bpm', 'beats per minute', 'beats/min'] }],
  examples: ['92 bpm', '117.55 bpm'],
});

const speedPhrase = (value: Range<Fraction>, digits: (n: number) => string): string =>
  value.from === value.to
    ? `${digits(value.to * 100)} %`
    : `${digits(value.from * 100)} to ${digits(value.to * 100)} %`;

/**
 * Speed of a cut against real time, inside as fractions: one speed, or a ramp from one to another,
 * linear in the time of the edit. Unlike other ranges a ramp has a direction: 100 to 25 % slows.
 */
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
  print: (value) => speedPhrase(value, shortest),
});
