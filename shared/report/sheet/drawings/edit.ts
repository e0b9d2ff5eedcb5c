/**
 * The edit over its time: cuts end to end with what they show, beats over them, speed under them. What
 * is there is a full tone, what no clip gives is hatched, what repeats frames is crossed.
 */

import type { Child, Drawing } from '../../../api/drawing.ts';
import type { CutJson, EditJson } from '../../../figures/edit-json.ts';
import { framesWords, speedWords } from '../../../say/timeline.ts';
import { allOf } from '../../../words/listed.ts';
import { message } from '../../../words/message.ts';
import { joinWords, paceWords, sourceWords, startWords } from '../../edit-words.ts';
import { label, line, MARGIN, polyline, rect, textWidth } from '../canvas.ts';

/** As wide as the page. */
const EDIT_WIDTH = 760;
const ROOM = EDIT_WIDTH - 2 * MARGIN;

/** A row holds about as many cuts as can bear a name; a long edit runs on over several. */
const CUTS_A_ROW = 10;
const MOST_ROWS = 16;

const BEATS = 12;
const BOX = 34;
const SPEED = 30;
const ROW = BEATS + BOX + SPEED + 34;
/** Marks nearer to each other than this run together. */
const LEAST_APART = 4;

/** A cut with its place. */
interface Placed extends CutJson {
  readonly startFrame: number;
  readonly durationFrames: number;
}

export function editDrawing(edit: EditJson, music: readonly Beat[]): Drawing {
  const drawing = { id: 'edit', title: message`The edit over its time`, key: '' } as const;
  const placed = edit.cuts.filter(
    (cut): cut is Placed => cut.startFrame !== null && cut.durationFrames !== null,
  );
  const total = edit.totalFrames;
  if (total === null || total === 0)
    return {
      ...drawing,
      words: message`Unknown: ${edit.notKnown.totalFrames ?? ''}.`,
      picture: null,
    };
  const rows = Math.min(MOST_ROWS, Math.ceil(placed.length / CUTS_A_ROW));
  const perRow = total / rows;
  return {
    ...drawing,
    words: placed.map(cutWords).join(' '),
    caption: message`Ticks above the cuts: beats, with longer ticks for bars. Crossing lines: a dissolve. Hatched: not covered by a clip. Below each cut: its speed. Dashed line: the slowest speed without repeated frames. Crossed: slower than that.`,
    picture: {
      width: EDIT_WIDTH,
      height: rows * ROW + 4,
      shapes: Array.from({ length: rows }, (_, row) =>
        rowShapes(
          { from: row * perRow, to: (row + 1) * perRow, top: row * ROW },
          placed,
          music,
          edit,
        ),
      ).flat(),
    },
  };
}

export interface Beat {
  /** Frames from the start of the film; not whole. */
  readonly frame: number;
  readonly isBar: boolean;
}

interface Row {
  /** Frames. */
  readonly from: number;
  readonly to: number;
  readonly top: number;
}

function rowShapes(
  row: Row,
  cuts: readonly Placed[],
  music: readonly Beat[],
  edit: EditJson,
): readonly Child[] {
  const x = (frame: number): number => MARGIN + ((frame - row.from) / (row.to - row.from)) * ROOM;
  const within = cuts.filter(
    ({ startFrame, durationFrames }) =>
      startFrame < row.to && startFrame + durationFrames > row.from,
  );
  const fastest = Math.max(1, ...cuts.flatMap(({ speed }) => speed ?? []));
  const low = row.top + BEATS + BOX + SPEED;
  const [first, last] = [within[0], within.at(-1)];
  return [
    ...beatMarks(row, music, x),
    ...within.flatMap((cut) => cutShapes(cut, row, x, fastest)),
    line('edge', x(row.from), low, x(row.to), low),
    first && label(timeAt(row.from, edit), MARGIN, low + 14, 'start', ROOM, EDIT_WIDTH),
    last && label(timeAt(row.to, edit), EDIT_WIDTH - MARGIN, low + 14, 'end', ROOM, EDIT_WIDTH),
  ];
}

const timeAt = (frame: number, { rateFps }: EditJson): string =>
  rateFps === null
    ? message`frame ${Math.round(frame)}`
    : `${Number((frame / rateFps).toFixed(1))} s`;

function beatMarks(
  { from, to, top }: Row,
  music: readonly Beat[],
  x: (frame: number) => number,
): readonly Child[] {
  const shown = music.filter(({ frame }) => frame >= from && frame < to);
  const apart = (marks: readonly Beat[]): boolean =>
    marks.length < 2 || ROOM / marks.length >= LEAST_APART;
  const bars = shown.filter(({ isBar }) => isBar);
  const marks = apart(shown) ? shown : apart(bars) ? bars : [];
  return marks.map(({ frame, isBar }) =>
    line(isBar ? 'edge' : 'limit', x(frame), top + (isBar ? 0 : 5), x(frame), top + BEATS - 2, {
      'data-beat': isBar ? 'bar' : 'beat',
    }),
  );
}

function cutShapes(
  cut: Placed,
  row: Row,
  x: (frame: number) => number,
  fastest: number,
): readonly Child[] {
  const { startFrame: start, durationFrames: frames, uncoveredFrames, dissolveFrames } = cut;
  const clamped = (frame: number): number => x(Math.max(row.from, Math.min(row.to, frame)));
  const [left, right] = [clamped(start), clamped(start + frames)];
  const top = row.top + BEATS;
  const missing = clamped(start + frames - (uncoveredFrames ?? 0));
  const isKnown = uncoveredFrames !== null;
  const begins = start >= row.from;
  const half = Math.floor((dissolveFrames ?? 0) / 2);
  const [fadeLeft, fadeRight] = [
    clamped(start - half),
    clamped(start - half + (dissolveFrames ?? 0)),
  ];
  const names = [cut.cut, cut.shot ?? ''].filter((name, index) => index === 0 || name !== cut.cut);
  return [
    missing > left &&
      rect(isKnown ? 'there' : 'part', left, top, missing - left, BOX, { 'data-cut': cut.cut }),
    right > missing &&
      rect('needed', missing, top, right - missing, BOX, { 'data-uncovered': cut.cut }),
    line('edge', left, top - 3, left, top + BOX + SPEED),
    ...(begins && fadeRight > fadeLeft
      ? [
          line('ray', fadeLeft, top, fadeRight, top + BOX, { 'data-dissolve': cut.cut }),
          line('ray', fadeLeft, top + BOX, fadeRight, top),
        ]
      : []),
    ...names.map((name, index) => inside(name, left, right, top + 14 + index * 14)),
    ...speedShapes(cut, { left, right, top: top + BOX + 3, x, row, fastest }),
  ];
}

/** A name where it fits. */
const inside = (name: string, left: number, right: number, y: number): Child =>
  textWidth(name) < right - left - 2 &&
  label(name, (left + right) / 2, y, 'middle', right - left, EDIT_WIDTH);

interface SpeedLane {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly x: (frame: number) => number;
  readonly row: Row;
  readonly fastest: number;
}

function speedShapes(
  cut: Placed,
  { left, right, top, x, row, fastest }: SpeedLane,
): readonly Child[] {
  const { startFrame, durationFrames, speed, repeatsFrames } = cut;
  const slowest = cut.slowestSpeedWithoutRepeats;
  if (!speed || cut.holdsPicture) return [];
  const height = SPEED - 5;
  const y = (share: number): number => top + height * (1 - share / fastest);
  const [from, to] = speed;
  const at = (frame: number): number =>
    from + ((to - from) * (frame - startFrame)) / Math.max(1, durationFrames);
  const begin = Math.max(row.from, startFrame);
  const end = Math.min(row.to, startFrame + durationFrames);
  const said = speedWords(speed);
  const told = [paceWords(cut), said].find((words) => textWidth(words) < right - left - 2);
  const slow = repeatsFrames === true && slowest !== null ? slowPart(speed, slowest) : null;
  const [slowLeft, slowRight] = (slow ?? [0, 0]).map((share) =>
    x(Math.max(begin, Math.min(end, startFrame + share * durationFrames))),
  ) as [number, number];
  return [
    slowRight > slowLeft &&
      rect('black', slowLeft, top, slowRight - slowLeft, height, { 'data-slow': said }),
    slowest !== null &&
      slowest <= fastest &&
      line('limit', left, y(slowest), right, y(slowest), { 'stroke-dasharray': '4 3' }),
    polyline('curve', [
      [left, y(at(begin))],
      [right, y(at(end))],
    ]),
    told !== undefined &&
      label(told, (left + right) / 2, top + height - 4, 'middle', right - left, EDIT_WIDTH),
  ];
}

/** Shares of the cut between which it is slower than `slowest`. */
function slowPart(
  [from, to]: NonNullable<CutJson['speed']>,
  slowest: number,
): readonly [start: number, end: number] {
  if (from < slowest && to < slowest) return [0, 1];
  const crossing = (slowest - from) / (to - from);
  return from < slowest ? [0, crossing] : [crossing, 1];
}

const offBeat = (frames: number): string => framesWords(Number(Math.abs(frames).toFixed(1)));

function cutWords(cut: Placed): string {
  const { uncoveredFrames, repeatsFrames, fromBeatFrames } = cut;
  const more = [
    repeatsFrames === true && message`repeats frames`,
    uncoveredFrames !== null &&
      uncoveredFrames > 0 &&
      message`its last ${framesWords(uncoveredFrames)} not covered by a clip`,
    fromBeatFrames !== null &&
      Math.abs(fromBeatFrames) > 1 &&
      (fromBeatFrames > 0
        ? message`${offBeat(fromBeatFrames)} after the beat`
        : message`${offBeat(fromBeatFrames)} before the beat`),
  ].filter((one): one is string => typeof one === 'string');
  const pace = cut.holdsPicture ? '' : message` at ${paceWords(cut)}`;
  const join = cut.dissolveFrames === 0 ? '' : `, ${joinWords(cut)}`;
  return message`${startWords(cut)}${join}: ${cut.cut} shows ${cut.shot ?? message`nothing`} for ${framesWords(cut.durationFrames)}${pace}, ${sourceWords(cut)}${more.length > 0 ? `; ${allOf(more)}` : ''}.`;
}
