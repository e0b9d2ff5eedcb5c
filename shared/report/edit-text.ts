/** The edit as a terminal shows it: a line a cut, in columns. */
import type { CutJson, EditJson } from '../figures/edit-json.ts';
import { inLanguage, later, message } from '../words/message.ts';
import { type Table, table } from './document/document.ts';
import {
  framesWords,
  joinWords,
  secondsWords,
  sourceWords,
  speedWords,
  startWords,
} from './edit-words.ts';

const HEAD: readonly string[] = [
  later`start`,
  later`length`,
  later`cut`,
  later`shows`,
  later`begins with`,
  later`speed`,
  later`of its clip`,
  later`beat`,
  '',
];

/** What heads the columns of `editRow`. */
export const editHead = (): readonly string[] =>
  HEAD.map((one) => (one === '' ? '' : inLanguage(one)));

/** The edit as a table: a line a cut. */
export const editTable = (edit: EditJson): Table => table(editHead(), edit.cuts.map(editRow));

/** "00:00:12:00, 300 frames, 12 s" */
export function totalWords({ totalFrames, totalTimecode, totalS, notKnown }: EditJson): string {
  if (totalFrames === null || totalS === null)
    return message`not known: ${notKnown.totalFrames ?? ''}`;
  return [totalTimecode, framesWords(totalFrames), secondsWords(totalS)].filter(Boolean).join(', ');
}

/** A cut's cells under `editHead`. */
export function editRow(cut: CutJson): readonly string[] {
  const { durationFrames, fromBeatFrames, uncoveredFrames, isHonest, notKnown } = cut;
  const length = durationFrames === null ? message`not known` : framesWords(durationFrames);
  const beat =
    fromBeatFrames === null
      ? ''
      : Math.abs(fromBeatFrames) <= 1
        ? message`on`
        : signed(fromBeatFrames);
  const remarks = [
    cut.startFrame === null && notKnown.startFrame,
    isHonest === false && message`slower than recorded`,
    uncoveredFrames !== null &&
      uncoveredFrames > 0 &&
      message`${framesWords(uncoveredFrames)} uncovered`,
  ];
  return [
    startWords(cut),
    length,
    cut.cut,
    cut.shot ?? '',
    joinWords(cut),
    speedWords(cut.speed),
    sourceWords(cut),
    beat,
    remarks.filter(Boolean).join(', '),
  ];
}

const signed = (frames: number): string =>
  `${frames < 0 ? '−' : '+'}${Number(Math.abs(frames).toFixed(1))}`;
