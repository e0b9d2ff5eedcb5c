/** A scale of a stack's frames for the rail, as long on paper as on the rail. */
import type { Child, Drawing } from '../../../api/drawing.ts';
import { message } from '../../../words/message.ts';
import { label, line, MARGIN, WIDTH } from '../canvas.ts';
import { type SaidShot, undrawn } from '../said.ts';

/** On paper and on the rail; a drawing fits a column of a printed page. */
const MM_PER_UNIT = 0.24;
/** Of the rail in one row. */
const ROW_MM = 80;
const ROW_HEIGHT = 48;
/** More than this is no paper scale. */
const MOST_ROWS = 5;
/** Marks nearer than this run together in print. */
const LEAST_APART_MM = 1;
/** Numbers need this much room. */
const NUMBER_MM = 8;
/** For checking the print. */
const BAR_MM = 50;

export function railDrawing(shot: SaidShot): Drawing | null {
  const { bench, figures, say } = shot;
  const { stackStepMm: step, stackFrames: frames, stackMarks: marks } = figures;
  if (!bench.stack) return null;
  const drawing = {
    id: 'rail-scale',
    title: message`Scale for the rail, actual size`,
    key: 'stack',
  } as const;
  if (!step.known || !frames.known || !marks.known) return undrawn(drawing, [step, frames, marks]);
  const travelMm = (frames.value - 1) * step.value;
  if (marks.value.length > 0 || travelMm < LEAST_APART_MM || travelMm > MOST_ROWS * ROW_MM)
    return null;
  const every = Math.ceil(LEAST_APART_MM / step.value - 1e-9);
  const told =
    every === 1
      ? message`Each mark is a frame.`
      : message`There is a mark at one frame in ${every}; the first is frame 1.`;
  return {
    ...drawing,
    words: message`${told} Print at 100%: the bar is ${say.length(BAR_MM)} long. From first frame to last: ${say.length(travelMm)}.`,
    picture: picture(step.value, frames.value, every),
  };
}

function picture(stepMm: number, frames: number, every: number): Drawing['picture'] {
  const rows = Math.floor(((frames - 1) * stepMm) / ROW_MM) + 1;
  const perNumber = Math.ceil(NUMBER_MM / (every * stepMm) - 1e-9) * every;
  const shapes: Child[] = [];
  for (let row = 0; row < rows; row++) {
    const length = Math.min(ROW_MM, (frames - 1) * stepMm - row * ROW_MM);
    const y = row * ROW_HEIGHT + 30;
    shapes.push(line('edge', MARGIN, y, MARGIN + length / MM_PER_UNIT, y));
  }
  for (let index = 0; index < frames; index += every) {
    const atMm = index * stepMm;
    const row = Math.floor(atMm / ROW_MM);
    const x = MARGIN + (atMm - row * ROW_MM) / MM_PER_UNIT;
    const y = row * ROW_HEIGHT + 30;
    const isNumbered = index % perNumber === 0;
    shapes.push(line('edge', x, y - (isNumbered ? 12 : 7), x, y, { 'data-frame': index + 1 }));
    if (isNumbered) shapes.push(label(String(index + 1), x, y + 14));
  }
  const bottom = rows * ROW_HEIGHT + 14;
  const end = MARGIN + BAR_MM / MM_PER_UNIT;
  return {
    height: bottom + 14,
    mmPerUnit: MM_PER_UNIT,
    isActualSize: true,
    shapes: [
      line('limit', MARGIN, bottom, end, bottom, { 'data-scale-bar-mm': String(BAR_MM) }),
      line('limit', MARGIN, bottom - 4, MARGIN, bottom + 4),
      line('limit', end, bottom - 4, end, bottom + 4),
      label(`${BAR_MM} mm`, Math.min(end + 6, WIDTH - MARGIN), bottom + 4, 'start'),
      ...shapes,
    ],
  };
}
