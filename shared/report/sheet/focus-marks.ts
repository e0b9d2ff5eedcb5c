/** Where rail or ring are set for a stack or along a focus pull: a table to print, folded where it is long. */
import { table } from '../../api/document.ts';
import type { FocusMarks } from '../../api/sheet.ts';
import type { FocusMark } from '../../figures/shot-figures.ts';
import type { Say } from '../../say/say.ts';
import { message } from '../../words/message.ts';
import { markedDistanceMm } from '../ring.ts';
import type { SaidShot } from './said.ts';

/** Rows that fit beside the drawings of a page. */
const MOST_ROWS = 24;

/** null: the shot has neither, or not enough is known. */
export const focusMarks = (shot: SaidShot): FocusMarks | null =>
  stackTable(shot) ?? pullTable(shot);

function stackTable(shot: SaidShot): FocusMarks | null {
  const { bench, figures, say } = shot;
  const { stackFrames: frames, stackStepMm: step, stackMarks } = figures;
  if (!bench.stack || !frames.known || !step.known || !stackMarks.known) return null;
  const marks = stackMarks.value;
  const every = foldedBy(frames.value);
  const isRail = marks.length === 0;
  const rows = kept(frames.value, every).map((index) => [
    String(index + 1),
    ...(isRail
      ? [positionWords(index * step.value, step.value, say)]
      : [
          ringWords(shot, marks[index]!),
          positionWords(marks[index]!.fromSensorMm - marks[0]!.fromSensorMm, step.value, say),
        ]),
  ]);
  return {
    title: message`Focus stack`,
    words: [
      isRail
        ? message`${frames.value} frames, ${positionWords(step.value, step.value, say)} apart. The rail is at 0 with the nearest point in focus, and moves the rig toward the subject.`
        : message`${frames.value} frames from the nearest point on; the ring turns away from close focus.`,
      bench.stack.isStills &&
        frames.value > 1 &&
        message`Name the stills \`${stillName(bench.shot, 1, frames.value)}\` to \`${stillName(bench.shot, frames.value, frames.value)}\`.`,
      every > 1 && message`The table has one frame in ${every}, and the last.`,
    ]
      .filter((one) => one)
      .join(' '),
    table: table(
      isRail
        ? [message`Frame`, message`Rail`]
        : [message`Frame`, message`Ring`, message`Behind the first`],
      rows,
      { isNamed: true, numbers: 1 },
    ),
  };
}

function pullTable(shot: SaidShot): FocusMarks | null {
  const { bench, figures, say } = shot;
  const { pullMarks, pullBreathing: breathing } = figures;
  if (!pullMarks.known) return null;
  const marks = pullMarks.value;
  const every = foldedBy(marks.length);
  const least = Math.min(...marks.map(({ depthMm }) => depthMm));
  const rows = kept(marks.length, every).map((index) => {
    const mark = marks[index]!;
    return [
      String(index + 1),
      ringWords(shot, mark),
      positionWords(mark.fromSensorMm, least, say),
      bench.recordedAreaMm.known
        ? say.length(bench.recordedAreaMm.value.width / mark.magnification)
        : '',
    ];
  });
  return {
    title: message`Scale for the focus pull`,
    words: [
      message`From mark to mark the focus moves by one depth of field.`,
      breathing.known && message`Focus breathing over the pull: ${say.percent(breathing.value)}.`,
      every > 1 && message`The table has one mark in ${every}, and the last.`,
    ]
      .filter((one) => one)
      .join(' '),
    table: table(
      [message`Mark`, message`Ring`, message`Focus to sensor`, message`Frame width`],
      rows,
      { isNamed: true, numbers: 1 },
    ),
  };
}

const foldedBy = (count: number): number => Math.max(1, Math.ceil((count - 1) / (MOST_ROWS - 1)));

/** The first, every n-th after it, and the last. */
function kept(count: number, every: number): readonly number[] {
  const indices = Array.from({ length: Math.ceil(count / every) }, (_, row) => row * every);
  return indices.at(-1) === count - 1 ? indices : [...indices, count - 1];
}

/** As the ring is engraved, for the lens alone. */
function ringWords({ bench, say }: SaidShot, { ringMagnification }: FocusMark): string {
  const mm = markedDistanceMm(bench, ringMagnification);
  if (mm === null) return message`infinity`;
  return say.lengths === 'inches' ? `${(mm / 304.8).toFixed(3)} ft` : `${(mm / 1000).toFixed(4)} m`;
}

/** With a digit more than the step has. */
export function positionWords(mm: number, stepMm: number, { lengths }: Say): string {
  const [value, step, unit] =
    lengths === 'inches' ? [mm / 25.4, stepMm / 25.4, 'in'] : [mm, stepMm, 'mm'];
  const digits = Math.min(4, Math.max(1, Math.ceil(-Math.log10(step)) + 1));
  return `${Number(value.toFixed(digits))} ${unit}`;
}

const stillName = (shot: string, frame: number, frames: number): string =>
  `${shot}-${String(frame).padStart(Math.max(2, String(frames).length), '0')}`;
