/** What is said of a traced frame: only what matters for what it shows. */
import type { Gathered, Note } from './gather.ts';
import type { FramePicture } from './trace.ts';

/** Less of a frame than this is not seen. */
const NOTICED = 0.002;

export const captionOf = ({ notes, clipAt }: Gathered, picture: FramePicture): readonly string[] =>
  notes.flatMap(({ text, of }) => (of === undefined || isSeen(of, picture, clipAt) ? [text] : []));

/** Share of the frame whose luminance the body can't record; coefficients of IEC 61966-2-1. */
export function clippedShare({ light, width, height }: FramePicture, clipAt: number): number {
  let clipped = 0;
  for (let at = 0; at < light.length; at += 3)
    if (0.2126 * light[at]! + 0.7152 * light[at + 1]! + 0.0722 * light[at + 2]! > clipAt)
      clipped += 1;
  return clipped / (width * height);
}

function isSeen(of: NonNullable<Note['of']>, picture: FramePicture, clipAt: number): boolean {
  const { lit, lens, hidden, beside } = picture;
  if (of === 'clipped') return clippedShare(picture, clipAt) > NOTICED;
  if (of !== 'dark') return mean(picture[of]) > NOTICED;
  const shown = [lit, lens, hidden, beside].reduce((sum, share) => sum + mean(share), 0);
  return mean(lit) > 0 || mean(lens) > 0 ? shown < 1 - NOTICED : false;
}

const mean = (share: Float32Array): number =>
  share.reduce((sum, one) => sum + one, 0) / share.length;
