/**
 * The day over its hours: a row a shot. Takes are a full tone, building is a lighter one, waiting is
 * left empty, a break is hatched over all rows; a dashed line ends the day.
 */
import type { Child, Drawing } from '../../../api/drawing.ts';
import type { DayJson, DayShotJson } from '../../../figures/day-json.ts';
import { clock } from '../../../quantity/time-of-day.ts';
import type { Say } from '../../../say/say.ts';
import { message } from '../../../words/message.ts';
import { stepWords } from '../../day-words.ts';
import { label, line, MARGIN, rect } from '../canvas.ts';

/** As wide as the page. */
const DAY_WIDTH = 760;
/** Names stand before the hours. */
const NAMES = 150;
const LEFT = MARGIN + NAMES + 10;
const ROOM = DAY_WIDTH - LEFT - MARGIN;
const ROW = 20;
const BAR = 12;
const TOP = 8;
/** More rows than this are no picture any more; the words have them all. */
const MOST_ROWS = 60;
/** Hours between two marks, the first that leaves room for their names. */
const EVERY_H = [0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 120, 240];
const LEAST_APART = 46;
const HOUR_S = 3600;

export function dayDrawing(day: DayJson, startS: number | null, say: Say): Drawing {
  const { shots: steps, countedS, availableS } = day;
  const breaks = day.breaks ?? [];
  const drawing = { id: 'day', title: message`The day over its hours`, key: '' } as const;
  const lengthS = Math.max(countedS ?? 0, availableS ?? 0);
  if (steps.length === 0 || lengthS <= 0)
    return { ...drawing, words: message`No shot is planned for the day.`, picture: null };
  const shown = steps.slice(0, MOST_ROWS);
  const x = (seconds: number): number => LEFT + (seconds / lengthS) * ROOM;
  const low = TOP + shown.length * ROW;
  return {
    ...drawing,
    words: steps.map((step) => stepWords(step, say)).join(' '),
    caption:
      breaks.length === 0
        ? message`Dark: takes. Light: building before them. Dashed line: the end of the day.`
        : message`Dark: takes. Light: building before them. Hatched: a break. Dashed line: the end of the day.`,
    picture: {
      width: DAY_WIDTH,
      height: low + 24,
      shapes: [
        ...hourMarks(startS, lengthS, low, x),
        ...shown.flatMap((step, index) => rowShapes(step, TOP + index * ROW, x)),
        ...breaks.flatMap((one) => breakShapes(one, lengthS, low, x)),
        availableS !== null &&
          line('limit', x(availableS), TOP - 6, x(availableS), low, {
            'stroke-dasharray': '4 3',
            'data-day-end': day.end ?? '',
          }),
        line('edge', LEFT, low, LEFT + ROOM, low),
      ],
    },
  };
}

function rowShapes(
  step: DayShotJson,
  top: number,
  x: (seconds: number) => number,
): readonly Child[] {
  const { shot, buildFromS, rebuildS, builtS, beginsS, endsS } = step;
  const y = top + (ROW - BAR) / 2;
  // A take of a minute is still to be seen.
  const width = Math.max(2, x(endsS) - x(beginsS));
  return [
    label(shot, MARGIN, y + BAR - 2, 'start', NAMES, DAY_WIDTH),
    rebuildS > 0 && rect('part', x(buildFromS), y, x(builtS) - x(buildFromS), BAR),
    rect('there', Math.min(x(beginsS), LEFT + ROOM - width), y, width, BAR, {
      'data-day-shot': shot,
    }),
  ];
}

/** Over every row, since nobody works then. */
function breakShapes(
  { from, fromS, toS }: NonNullable<DayJson['breaks']>[number],
  lengthS: number,
  low: number,
  x: (seconds: number) => number,
): readonly Child[] {
  const [left, right] = [x(Math.min(fromS, lengthS)), x(Math.min(toS, lengthS))];
  return right > left
    ? [rect('needed', left, TOP - 2, right - left, low - TOP + 2, { 'data-break': from })]
    : [];
}

/** On whole hours of the clock where its start is known. */
function hourMarks(
  startS: number | null,
  lengthS: number,
  low: number,
  x: (seconds: number) => number,
): readonly Child[] {
  const fits = (hours: number): boolean => (hours * HOUR_S * ROOM) / lengthS >= LEAST_APART;
  const every = (EVERY_H.find(fits) ?? lengthS / HOUR_S) * HOUR_S;
  const start = startS ?? 0;
  const first = Math.ceil(start / every) * every - start;
  const marks: Child[] = [];
  for (let at = first; at <= lengthS; at += every)
    marks.push(
      line('grid', x(at), TOP - 4, x(at), low + 3),
      label(
        startS === null ? `+${clock(at)}` : clock(start + at),
        x(at),
        low + 16,
        'middle',
        LEAST_APART,
        DAY_WIDTH,
      ),
    );
  return marks;
}
