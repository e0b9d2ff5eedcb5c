/**
 * The edit as a list in the form of CMX 3600 (its published description): one video track, dissolves
 * that begin with their event, M2 for constant speeds. Source timecode counts the frames of a clip
 * one by one, at the rate of the list and from the clip's own timecode, since the form knows one rate
 * only. M2 says how many of those frames are shown a second. A picture that is held is one frame of its
 * source at a speed of 0: an event without a source is none to many readers (common practice).
 */
import type { Rational } from '../../quantity/rational.ts';
import { type Exact, exact, fromRational, order, times, wholeBelow } from '../../timeline/exact.ts';
import type { ListedEvent } from '../../timeline/listed.ts';
import type { Material, Programme } from '../../timeline/programme.ts';
import { sameLabel, timecode } from '../../timeline/timecode.ts';
import { inertLine } from '../inert.ts';

/** A file that came from anywhere, as the form names it: an auxiliary source. */
const REEL = 'AX';
const BLACK = 'BL';
const LONGEST_TITLE = 70;

/** @returns null at a rate that has no timecode */
export function edl(
  programme: Programme,
  events: readonly ListedEvent[],
  notes: readonly string[],
): string | null {
  const { title, rate, start } = programme;
  const at = (frame: number): string | undefined => timecode(frame, rate, start.isDrop);
  if (at(0) === undefined) return null;
  const lines: string[] = [];
  let last: Line | null = null;
  for (const [index, event] of events.entries()) {
    const line = lineOf(event, programme, at as (frame: number) => string);
    lines.push(...eventLines(line, last, index + 1, perSecond(fromRational(rate))));
    last = line;
  }
  const head = [
    `TITLE: ${inertLine(title).slice(0, LONGEST_TITLE)}`,
    `FCM: ${start.isDrop ? 'DROP FRAME' : 'NON-DROP FRAME'}`,
    ...notes.map((note) => comment('NOTE', note)),
    '',
  ];
  return `${[...head, ...lines].join('\r\n')}\r\n`;
}

const comment = (what: string, text: string): string => `* ${what}: ${inertLine(text)}`;

interface Line {
  readonly event: ListedEvent;
  /** Timecode in the clip: its first frame, the first after it, and what is on when it ends. */
  readonly source: readonly [from: string, to: string];
  readonly sourceAtEnd: string;
  readonly record: readonly [from: string, to: string];
  /** Frames of the clip a second; null: one for each of the list. */
  readonly perSecond: string | null;
}

function lineOf(
  event: ListedEvent,
  { rate, start }: Programme,
  at: (frame: number) => string,
): Line {
  const { piece, cut, startFrame, frames } = event;
  const first = piece ? labelOf(cut.material, rate, start.isDrop) + piece.start : 0;
  const perFrame = piece?.perFrame ?? exact(1);
  const used = times(perFrame, exact(frames));
  const from = start.frame + startFrame;
  return {
    event,
    source: [at(first), at(first + Math.max(1, upward(used)))],
    sourceAtEnd: at(first + wholeBelow(used)),
    record: [at(from), at(from + frames)],
    perSecond:
      order(perFrame, exact(1)) === 0 ? null : perSecond(times(perFrame, fromRational(rate))),
  };
}

const motion = (speed: string | null, from: string): readonly string[] =>
  speed === null ? [] : [`M2   ${REEL.padEnd(8)} ${speed.padEnd(20)} ${from}`];

const upward = (value: Exact): number => -wholeBelow({ n: -value.n, d: value.d });

/** The number that a clip's own timecode gives its first frame, as the list counts. */
const labelOf = ({ startTimecode }: Material, rate: Rational, isDrop: boolean): number =>
  (startTimecode && sameLabel(startTimecode, rate, isDrop)) ?? 0;

/**
 * Frames a second with one decimal, as published; with up to nine where one would show another
 * frame, rounded up, so that a frame that is due isn't late.
 */
function perSecond(value: Exact): string {
  for (let digits = 1; digits < 9; digits++) {
    const scaled = times(value, exact(10 ** digits));
    if (scaled.d === 1n) return decimal(scaled.n, digits);
  }
  return decimal(BigInt(upward(times(value, exact(10 ** 9)))), 9);
}

function decimal(scaled: bigint, digits: number): string {
  const text = scaled.toString().padStart(digits + 1, '0');
  return `${text.slice(0, -digits).padStart(3, '0')}.${text.slice(-digits)}`;
}

/** @param plain frames a second of the list */
function eventLines(
  line: Line,
  last: Line | null,
  number: number,
  plain: string,
): readonly string[] {
  const { event, source, record } = line;
  const { cut, piece, dissolveFrames } = event;
  const reel = piece ? REEL : BLACK;
  if (dissolveFrames === 0 || !last)
    return [
      row(number, reel, 'C', null, source, record),
      ...motion(line.perSecond, source[0]),
      ...(piece ? [comment('FROM CLIP NAME', cut.material.name), ...aboutLines(line)] : []),
    ];
  const out = last.sourceAtEnd;
  // Lines of one reel and one timecode are told apart by their order, so both have a speed or none.
  const motions =
    last.perSecond === null && line.perSecond === null
      ? []
      : [...motion(last.perSecond ?? plain, out), ...motion(line.perSecond ?? plain, source[0])];
  return [
    row(number, REEL, 'C', null, [out, out], [record[0], record[0]]),
    row(number, reel, 'D', dissolveFrames, source, record),
    ...motions,
    comment('FROM CLIP NAME', last.event.cut.material.name),
    comment('TO CLIP NAME', cut.material.name),
    ...aboutLines(line),
  ];
}

/** What the form has no place for, where somebody will read it. */
function aboutLines({ event: { cut, isFirst } }: Line): readonly string[] {
  if (!isFirst) return [];
  const { material, name, reframe, grade, about } = cut;
  return [
    ...(material.url === null ? [] : [comment('SOURCE FILE', material.url)]),
    comment('CUT', name),
    ...(reframe === null ? [] : [comment('PUNCH-IN', `${reframe}x`)]),
    ...(grade === null ? [] : [comment('GRADE', grade)]),
    ...(about === null ? [] : [comment('COMMENT', about)]),
  ];
}

function row(
  number: number,
  reel: string,
  kind: 'C' | 'D',
  dissolve: number | null,
  source: readonly [string, string],
  record: readonly [string, string],
): string {
  const length = dissolve === null ? '   ' : String(dissolve).padStart(3, '0');
  return `${String(number).padStart(3, '0')}  ${reel.padEnd(8)} V     ${kind}    ${length} ${[...source, ...record].join(' ')}`;
}
