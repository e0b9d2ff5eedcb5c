/** All clips of a folder, read one after another: when each was made, and how long it is. */
import path from 'node:path';
import type { CardClip } from '../../shared/bring-back/bring-clips.ts';
import type { ClipReader } from './clip-reader.ts';
import { clipsUnder } from './find-clips.ts';

interface ReadCard {
  readonly clips: readonly CardClip[];
  /** By name, with why they can't be read. */
  readonly unread: readonly { readonly file: string; readonly why: string }[];
  readonly isStopped: boolean;
}

/**
 * @param plan folder of the plan, which names what lies below it; other clips are named from `folder`
 * @param progress told before each clip
 */
export async function cardClips(
  folder: string,
  plan: string,
  reader: ClipReader,
  signal: AbortSignal,
  progress: (done: number, of: number, file: string) => void,
): Promise<ReadCard> {
  const files = await clipsUnder(folder);
  const clips: CardClip[] = [];
  const unread: { file: string; why: string }[] = [];
  for (const [done, each] of files.entries()) {
    if (signal.aborted) break;
    const file = nameOf(each, plan, folder);
    progress(done, files.length, file);
    const reading = await reader.read(each, signal).catch((cause: unknown) => {
      if (signal.aborted) return null;
      throw cause;
    });
    if (reading?.state === 'read')
      clips.push({ file, created: reading.facts.created, durationS: reading.facts.durationS });
    else if (reading?.state === 'unreadable') unread.push({ file, why: reading.why });
  }
  return { clips, unread, isStopped: signal.aborted };
}

function nameOf(file: string, plan: string, folder: string): string {
  const below = (base: string): string | null => {
    const way = path.relative(base, file);
    return way.startsWith('..') || path.isAbsolute(way) ? null : way;
  };
  return (below(plan) ?? below(folder) ?? path.basename(file)).split(path.sep).join('/');
}
