/** Beats and bars of music under an edit: an even tempo from a first beat on. */
import { type Exact, exact, minus, nearestWhole, over, plus, times, toNumber } from './exact.ts';

export interface Music {
  /** Beats per minute, above 0. */
  readonly tempo: Exact;
  /** When the first beat falls, s from the start of the film. */
  readonly firstBeat: Exact;
  /** Beats in a bar; undefined: not known. */
  readonly bar?: number;
}

const SECONDS_A_MINUTE = exact(60);

/** Length of a beat, s: 60/tempo. */
export const beatLength = (tempo: Exact): Exact => over(SECONDS_A_MINUTE, tempo);

/** Frames per beat: 60·rate/tempo; click tables at 24 fps print 1440/bpm. */
export const framesPerBeat = (tempo: Exact, rate: Exact): Exact => times(beatLength(tempo), rate);

/** When beat `index` falls, s; the first is 0. */
export const beatAt = ({ tempo, firstBeat }: Music, index: number): Exact =>
  plus(firstBeat, times(exact(index), beatLength(tempo)));

/** The beat nearest to `time` (s): its number from 0. Before the first there is none. */
export const nearestBeat = ({ tempo, firstBeat }: Music, time: Exact): number =>
  Math.max(0, nearestWhole(over(minus(time, firstBeat), beatLength(tempo))));

/** Frames from the nearest beat to a frame: negative where the frame comes early. */
export function framesFromBeat(music: Music, frame: number, rate: Exact): number {
  const at = over(exact(frame), rate);
  const beat = beatAt(music, nearestBeat(music, at));
  return toNumber(times(minus(at, beat), rate));
}

/**
 * The beats before frame `end`, in frames; the first of a bar says so. None where there are more
 * than `most`.
 */
export function beatsBefore(
  music: Music,
  rate: Exact,
  end: number,
  most: number,
): readonly { readonly frame: Exact; readonly isBar: boolean }[] {
  const { bar } = music;
  const found: { frame: Exact; isBar: boolean }[] = [];
  for (let index = 0; index < most; index++) {
    const frame = times(beatAt(music, index), rate);
    if (toNumber(frame) >= end) return found;
    found.push({ frame, isBar: bar !== undefined && index % bar === 0 });
  }
  return [];
}
