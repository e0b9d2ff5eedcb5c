/** All clips of a plan, read one after another: what each is, and what lies there besides. */
import path from 'node:path';
import type { Core } from '../../shared/api/facade.ts';
import type { ClipReading } from '../../shared/clips/facts.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { CheckedClip } from '../../shared/report/clips.ts';
import type { Looker } from '../looking/looker.ts';
import type { ClipReader } from './clip-reader.ts';
import { type ClipFolders, clipsUnder, findClip } from './find-clips.ts';

export interface CheckOptions {
  readonly core: Core;
  readonly plan: FileId;
  readonly folders: ClipFolders;
  readonly reader: ClipReader;
  readonly signal: AbortSignal;
  /** Looks at the pictures of what could be read; left out: nobody does. */
  readonly looker?: Looker | null;
  /**
   * Told before each clip, and while it is looked at.
   * @param looked share of its frames, 0 to 1; left out: none yet
   */
  progress(done: number, of: number, clip: string, looked?: number): void;
}

export interface CheckedPlan {
  readonly clips: readonly CheckedClip[];
  /** By the path that the plan writes. */
  readonly readings: ReadonlyMap<string, ClipReading>;
  /** Absolute paths of clips that no shot asks for. */
  readonly notAsked: readonly string[];
  readonly stopped: boolean;
  /** Small pictures of what was looked at, by the path that the plan writes. */
  readonly thumbnails: ReadonlyMap<string, Uint8Array>;
}

export async function checkClips(options: CheckOptions): Promise<CheckedPlan> {
  const { core, plan, folders, signal } = options;
  const listed = core.clips(plan);
  const readings = new Map<string, ClipReading>();
  const thumbnails = new Map<string, Uint8Array>();
  const files = new Set<string>();
  const paths = [...new Set(listed.map((clip) => clip.path))];
  for (const [done, written] of paths.entries()) {
    const found = await findClip(written, folders);
    if (found.ok) files.add(found.file);
    if (signal.aborted) continue;
    options.progress(done, paths.length, written);
    const reading = found.ok ? await readUnlessStopped(options, found.file) : found.reading;
    if (!reading) continue;
    readings.set(written, reading);
    const shot = listed.find((clip) => clip.path === written)?.shot;
    const ask = shot === undefined ? null : core.lookAsk(plan, shot);
    if (!options.looker || !found.ok || reading.state !== 'read' || !ask) continue;
    const seen = await options.looker.look(found.file, reading.facts, ask, signal, (share) =>
      options.progress(done, paths.length, written, share),
    );
    if (seen.state === 'seen') {
      readings.set(written, { ...reading, looked: seen.looked });
      thumbnails.set(written, seen.thumbnail);
    }
    if (seen.state === 'failed') readings.set(written, { ...reading, lookFailed: seen.why });
  }
  return {
    clips: listed.map(({ shot, path: file, verdict }) => ({
      shot,
      file,
      verdict,
      reading: readings.get(file) ?? null,
    })),
    readings,
    thumbnails,
    notAsked: await leftOver(folders, files),
    stopped: signal.aborted,
  };
}

async function readUnlessStopped(
  { reader, signal }: CheckOptions,
  file: string,
): Promise<ClipReading | null> {
  try {
    return await reader.read(file, signal);
  } catch (cause) {
    if (signal.aborted) return null;
    throw cause;
  }
}

/** In the folder of the media with all below it; without one, beside the clips of the plan. */
async function leftOver(
  { media }: ClipFolders,
  asked: ReadonlySet<string>,
): Promise<readonly string[]> {
  const folders = media === null ? new Set([...asked].map((file) => path.dirname(file))) : [media];
  const found: string[] = [];
  for (const folder of folders)
    found.push(...(await clipsUnder(folder, media === null ? 0 : undefined)));
  return found.filter((file) => !asked.has(file));
}
