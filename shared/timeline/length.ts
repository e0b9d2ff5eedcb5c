/** Lengths of the edit in seconds: what is counted in frames needs the rate, in beats the tempo. */
import type { TimelineLength } from '../quantity/edit.ts';
import { beatLength, type Music } from './beats.ts';
import { type Exact, exact, fromWritten, over, times } from './exact.ts';

type LengthLacks = 'rate' | 'tempo' | 'bar';

/**
 * The length in seconds, exact; or what it lacks. `rate` is the delivered one, in frames per
 * second.
 */
export function secondsOf(
  { amount, unit }: TimelineLength,
  rate: Exact | undefined,
  music: Pick<Music, 'tempo' | 'bar'> | undefined,
): Exact | LengthLacks {
  const count = fromWritten(amount);
  switch (unit) {
    case 's':
      return count;
    case 'min':
      return times(count, exact(60));
    case 'frames':
      return rate ? over(count, rate) : 'rate';
    case 'beats':
      return music ? times(count, beatLength(music.tempo)) : 'tempo';
    case 'bars':
      if (!music) return 'tempo';
      return music.bar === undefined
        ? 'bar'
        : times(times(count, exact(music.bar)), beatLength(music.tempo));
  }
}
