/** The edit in words and as a table: for a terminal, a sheet, a shot list. */

import { type Table, table } from '../api/document.ts';
import type { CutJson, EditJson } from '../figures/edit-json.ts';
import { framesWords, realSpeedWords, secondsWords, speedWords } from '../say/timeline.ts';
import { inLanguage, later, message } from '../words/message.ts';

/** "take 1, 2 s to 4.67 s", "media/0007.mp4, 4 s to 8 s" */
export function sourceWords({
  clip,
  clipFile,
  sourceStartS,
  sourceEndS,
  holdsPicture,
}: CutJson): string {
  if (holdsPicture) return message`${clipFile ?? message`the finished picture`}, held`;
  if (clip === null || sourceStartS === null || sourceEndS === null) return message`unknown`;
  return message`${clipFile ?? message`take ${clip}`}, ${secondsWords(sourceStartS)} to ${secondsWords(sourceEndS)}`;
}

/** "100%, 21% of real time": what is seen, where the body or the interval has changed the clip's own. */
export function paceWords({ speed, realSpeed, holdsPicture }: CutJson): string {
  if (holdsPicture) return message`held`;
  const own = speedWords(speed);
  if (!speed || !realSpeed || realSpeed[0] === speed[0]) return own;
  return message`${own}, ${realSpeedWords(realSpeed)} of real time`;
}

/** Where it begins, by timecode, else by frame. */
export const startWords = ({ startTimecode, startFrame }: CutJson): string =>
  startTimecode ?? (startFrame === null ? message`unknown` : message`frame ${startFrame}`);

/** How it begins: "cut", "dissolve 12 frames". */
export const joinWords = ({ dissolveFrames }: CutJson): string =>
  dissolveFrames === null
    ? message`unknown`
    : dissolveFrames === 0
      ? message`cut`
      : message`dissolve ${framesWords(dissolveFrames)}`;

const HEAD: readonly string[] = [
  later`start`,
  later`length`,
  later`cut`,
  later`shows`,
  later`begins with`,
  later`speed`,
  later`clip used`,
  later`beat`,
  '',
];

/** The edit as a table: a line a cut. */
export const editTable = (edit: EditJson): Table =>
  table(
    HEAD.map((one) => (one === '' ? '' : inLanguage(one))),
    edit.cuts.map(editRow),
  );

/** "00:00:12:00, 300 frames, 12 s" */
export function totalWords({ totalFrames, totalTimecode, totalS, notKnown }: EditJson): string {
  if (totalFrames === null || totalS === null)
    return message`unknown: ${notKnown.totalFrames ?? ''}`;
  return [totalTimecode, framesWords(totalFrames), secondsWords(totalS)].filter(Boolean).join(', ');
}

/** A cut's cells under `HEAD`. */
function editRow(cut: CutJson): readonly string[] {
  const { durationFrames, fromBeatFrames, uncoveredFrames, repeatsFrames, notKnown } = cut;
  const { reframe, grade, about } = cut;
  const length = durationFrames === null ? message`unknown` : framesWords(durationFrames);
  const beat =
    fromBeatFrames === null
      ? ''
      : Math.abs(fromBeatFrames) <= 1
        ? message`on`
        : signed(fromBeatFrames);
  const remarks = [
    cut.startFrame === null && notKnown.startFrame,
    repeatsFrames === true && message`repeats frames`,
    uncoveredFrames !== null &&
      uncoveredFrames > 0 &&
      message`${framesWords(uncoveredFrames)} uncovered`,
    reframe !== null && message`punch-in ${reframe}x`,
    grade !== null && message`grade ${grade}`,
    about,
  ];
  return [
    startWords(cut),
    length,
    cut.cut,
    cut.shot ?? '',
    joinWords(cut),
    paceWords(cut),
    sourceWords(cut),
    beat,
    remarks.filter(Boolean).join(', '),
  ];
}

const signed = (frames: number): string =>
  `${frames < 0 ? '−' : '+'}${Number(Math.abs(frames).toFixed(1))}`;
