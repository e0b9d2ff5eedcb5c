/** What is said of a traced frame: only what matters for what it shows. */
import type { Note } from './gather.ts';
import type { FramePicture } from './trace.ts';

/** Less of a frame than this is not seen. */
const NOTICED = 0.002;

export const captionOf = (notes: readonly Note[], picture: FramePicture): readonly string[] =>
  notes.flatMap(({ text, of }) => (of === undefined || isSeen(of, picture) ? [text] : []));

function isSeen(of: NonNullable<Note['of']>, picture: FramePicture): boolean {
  const { lit, lens, hidden, beside } = picture;
  if (of !== 'dark') return mean(picture[of]) > NOTICED;
  const shown = [lit, lens, hidden, beside].reduce((sum, share) => sum + mean(share), 0);
  return mean(lit) > 0 || mean(lens) > 0 ? shown < 1 - NOTICED : false;
}

const mean = (share: Float32Array): number =>
  share.reduce((sum, one) => sum + one, 0) / share.length;
