/** The edit in words: for a terminal, a sheet, a shot list. */
import type { CutJson } from '../figures/edit-json.ts';
import { significant } from '../say/say.ts';
import { message } from '../words/message.ts';

/** "50 %", "100 to 25 %" */
export function speedWords(speed: CutJson['speed']): string {
  if (!speed) return message`not known`;
  const percent = (share: number): string => significant(share * 100, 3);
  const [from, to] = [percent(speed[0]), percent(speed[1])];
  return from === to ? `${to} %` : message`${from} to ${to} %`;
}

/** Seconds to the hundredth: a frame is 0.04 s. */
export const secondsWords = (seconds: number): string => `${Number(seconds.toFixed(2))} s`;

/** "take 1, 2 s to 4.67 s", "media/0007.mp4, 4 s to 8 s" */
export function sourceWords({ clip, clipFile, sourceStartS, sourceEndS }: CutJson): string {
  if (clip === null || sourceStartS === null || sourceEndS === null) return message`not known`;
  return message`${clipFile ?? message`take ${clip}`}, ${secondsWords(sourceStartS)} to ${secondsWords(sourceEndS)}`;
}

/** Where it begins, by timecode, else by frame. */
export const startWords = ({ startTimecode, startFrame }: CutJson): string =>
  startTimecode ?? (startFrame === null ? message`not known` : message`frame ${startFrame}`);

export const framesWords = (count: number): string =>
  count === 1 ? message`${count} frame` : message`${count} frames`;

/** How it begins: "cut", "dissolve 12 frames". */
export const joinWords = ({ dissolveFrames }: CutJson): string =>
  dissolveFrames === null
    ? message`not known`
    : dissolveFrames === 0
      ? message`cut`
      : message`dissolve ${framesWords(dissolveFrames)}`;
