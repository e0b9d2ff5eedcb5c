/** Beats of the music by frame; the first of a bar says so. */
import { beatsBefore } from '../../timeline/beats.ts';
import { fromRational, nearestWhole } from '../../timeline/exact.ts';
import type { Programme } from '../../timeline/programme.ts';

/** More beats than a reader of the file would want; none are written beyond. */
const MOST_MARKERS = 10_000;

interface BeatMark {
  /** From the start of the edit. */
  readonly frame: number;
  readonly name: string;
}

export function beatMarks({ music, rate, frames }: Programme): readonly BeatMark[] {
  if (!music) return [];
  const { bar = 1 } = music;
  return beatsBefore(music, fromRational(rate), frames, MOST_MARKERS)
    .map(({ frame, isBar }, index) => ({
      frame: nearestWhole(frame),
      name: isBar ? `bar ${index / bar + 1}` : `beat ${index + 1}`,
    }))
    .filter(({ frame }) => frame < frames);
}
