/** The edit in words: for a terminal, a sheet, a shot list. */
import type { CutJson } from '../figures/edit-json.ts';
import { significant } from '../rules/say.ts';

/** "50 %", "100 to 25 %" */
export function speedWords(speed: CutJson['speed']): string {
  if (!speed) return 'not known';
  const [from, to] = speed.map((share) => significant(share * 100, 3));
  return from === to ? `${to} %` : `${from} to ${to} %`;
}

/** Seconds to the hundredth: a frame is 0.04 s. */
export const secondsWords = (seconds: number): string => `${Number(seconds.toFixed(2))} s`;

/** "take 1, 2 s to 4.67 s", "media/0007.mp4, 4 s to 8 s" */
export function sourceWords({ clip, clipFile, sourceStartS, sourceEndS }: CutJson): string {
  if (clip === null || sourceStartS === null || sourceEndS === null) return 'not known';
  return `${clipFile ?? `take ${clip}`}, ${secondsWords(sourceStartS)} to ${secondsWords(sourceEndS)}`;
}

/** Where it begins, by timecode, else by frame. */
export const startWords = ({ startTimecode, startFrame }: CutJson): string =>
  startTimecode ?? (startFrame === null ? 'not known' : `frame ${startFrame}`);

export const framesWords = (count: number): string =>
  `${count} ${count === 1 ? 'frame' : 'frames'}`;

/** How it begins: "cut", "dissolve 12 frames". */
export const joinWords = ({ dissolveFrames }: CutJson): string =>
  dissolveFrames === null
    ? 'not known'
    : dissolveFrames === 0
      ? 'cut'
      : `dissolve ${framesWords(dissolveFrames)}`;
