/** Who looks at clips: the user's own ffmpeg, where there is one. */
import type { ClipFacts } from '../../shared/clips/facts.ts';
import type { LookAsk } from '../../shared/looked-at/looked.ts';
import { toNumber } from '../../shared/quantity/rational.ts';
import { findFfmpeg } from './find-ffmpeg.ts';
import { type LookAnswer, lookAtClip } from './look-at-clip.ts';

export interface Looker {
  /**
   * @param file absolute path of a clip that was read
   * @param progress told how much of it was looked at, 0 to 1
   */
  look(
    file: string,
    facts: ClipFacts,
    ask: LookAsk,
    signal: AbortSignal,
    progress: (share: number) => void,
  ): Promise<LookAnswer>;
}

/** @returns null: ffmpeg isn't on the path */
export async function ffmpegLooker(
  environment: Readonly<Record<string, string | undefined>>,
): Promise<Looker | null> {
  const program = await findFfmpeg(environment);
  if (program === null) return null;
  return {
    look: (file, { size, rate, durationS }, ask, signal, progress) => {
      const frames = Math.max(1, durationS * usualFps(rate));
      return lookAtClip({
        ...{ program, file, size, ask, signal },
        progress: (done) => progress(Math.min(1, done / frames)),
      });
    },
  };
}

/** For the progress alone: of too few frames to tell, any rate will do. */
const usualFps = (rate: ClipFacts['rate']): number =>
  rate === null ? 25 : rate.kind === 'constant' ? toNumber(rate.rate) : rate.mean;
