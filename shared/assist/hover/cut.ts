/** What a cut comes to: where it stands, what it uses, whether the clips give it; and its music. */

import type { CutFigures, EditFigures } from '../../figures/edit-figures.ts';
import { derive, notKnown, valueIn } from '../../figures/figure.ts';
import { isOf } from '../../plan/entry-id.ts';
import type { EntryId, FileId } from '../../plan/place.ts';
import { framesWords, realSpeedWords, secondsWords } from '../../say/timeline.ts';
import { framesPerBeat } from '../../timeline/beats.ts';
import { fromRational, toNumber } from '../../timeline/exact.ts';
import { timecode } from '../../timeline/timecode.ts';
import { message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { figureLine, paragraphs, plain, table } from './markdown.ts';

/** null: the entry is no cut that has been worked out. */
export function cutHover({ analysis, say }: Context, file: FileId, entry: EntryId): string | null {
  if (!isOf('cuts', entry)) return null;
  const edit = analysis.edit(file);
  const cut = edit?.cuts.find(({ at }) => at.entry === entry);
  if (!edit || !cut) return null;
  const percent = (share: number): string => say.percent(share);
  return paragraphs(
    table([
      figureLine(message`begins`, cut.track, ({ startFrame }) => `**${at(startFrame, edit)}**`),
      figureLine(message`length`, cut.track, ({ startFrame, endFrame }) =>
        framesWords(endFrame - startFrame),
      ),
      cut.fields?.speed.state === 'known' &&
        figureLine(message`slowest without repeats`, cut.slowestWithoutRepeats, (share) =>
          percent(toNumber(share)),
        ),
      isOfItsOwnPace(cut) &&
        figureLine(message`of real time`, cut.realSpeed, ({ from, to }) =>
          realSpeedWords([from, to]),
        ),
      figureLine(message`clip used`, cut.laid, ({ clip, start, end }) => {
        if (cut.footage?.isHeld)
          return message`${cut.clipFile === null ? message`the finished picture` : plain(cut.clipFile)}, held`;
        const name = cut.clipFile === null ? message`take ${clip + 1}` : plain(cut.clipFile);
        return message`${name}, ${secondsWords(toNumber(start))} to ${secondsWords(toNumber(end))}`;
      }),
      edit.music.known && figureLine(message`from the beat`, cut.fromBeatFrames, beatWords),
      ...joinLines(cut),
      figureLine(message`not covered by a clip`, cut.uncoveredFrames, (frames) => {
        const words = frames === 0 ? message`none` : framesWords(frames);
        // A file that is listed has a length of its own, which nobody reads while a plan is written.
        return cut.clipFile === null || cut.footage?.isHeld
          ? words
          : message`${words}, if the clip is as long as a take is planned`;
      }),
    ]),
  );
}

function beatWords(frames: number): string {
  const off = framesWords(Number(Math.abs(frames).toFixed(1)));
  return Math.abs(frames) < 0.05
    ? message`on it`
    : frames > 0
      ? message`${off} late`
      : message`${off} early`;
}

function joinLines(cut: CutFigures) {
  const handle = ({ neededFrames, thereFrames }: { neededFrames: number; thereFrames: number }) =>
    message`${framesWords(thereFrames)}, needs ${neededFrames}`;
  return [
    valueIn(cut.handleBefore)?.neededFrames &&
      figureLine(message`handle before`, cut.handleBefore, handle),
    valueIn(cut.handleAfter)?.neededFrames &&
      figureLine(message`handle after`, cut.handleAfter, handle),
  ].map((one) => one || null);
}

const at = (frame: number, { rate }: EditFigures): string =>
  (rate.known && timecode(frame, rate.value)) || message`frame ${frame}`;

/** On the values of `music`: how long a beat is, and the whole film. */
export function musicHover({ analysis }: Context, file: FileId): string | null {
  const edit = analysis.edit(file);
  if (!edit) return null;
  const beat = derive([edit.music, edit.rate], ({ tempo }, fps) =>
    toNumber(framesPerBeat(tempo, fromRational(fps))),
  );
  const bar = derive([edit.music, beat], ({ bar: beats }, frames) =>
    beats === undefined ? notKnown(message`the music's \`bar\` is not given`) : beats * frames,
  );
  const frames = (count: number): string => framesWords(Number(count.toFixed(2)));
  return table([
    figureLine(message`a beat`, beat, (count) => `**${frames(count)}**`),
    figureLine(message`a bar`, bar, frames),
    figureLine(
      message`the edit`,
      edit.totalFrames,
      (count) => `${at(count, edit)}, ${framesWords(count)}`,
    ),
  ]);
}

const isOfItsOwnPace = ({ footage }: CutFigures): boolean =>
  footage !== null && footage.realPerS !== null && footage.realPerS !== 1;
