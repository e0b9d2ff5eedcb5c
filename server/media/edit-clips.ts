/** The clips that an edit uses, read for a timeline: what each is, and where it lies. */
import { pathToFileURL } from 'node:url';
import type { Core } from '../../shared/api/facade.ts';
import type { TimelineOptions } from '../../shared/api/timeline.ts';
import type { ClipReading } from '../../shared/clips/facts.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { ClipReader } from './clip-reader.ts';
import { type ClipFolders, findClip } from './find-clips.ts';

interface EditClipsOptions {
  readonly core: Core;
  readonly plan: FileId;
  readonly folders: ClipFolders;
  /** Made when the first clip is found: an edit of clips that aren't there needs none. */
  readonly createReader: () => ClipReader;
  readonly signal: AbortSignal;
}

export type EditClips = Required<Pick<TimelineOptions, 'readings' | 'found'>>;

/** Those that are read before `signal` says to stop. */
export async function editClips(options: EditClipsOptions): Promise<EditClips> {
  const { core, plan, folders, createReader, signal } = options;
  const cuts = core.editFigures(plan)?.cuts ?? [];
  const paths = new Set(cuts.flatMap(({ clipFile }) => (clipFile === null ? [] : [clipFile])));
  const readings = new Map<string, ClipReading>();
  const found = new Map<string, string>();
  let reader: ClipReader | undefined;
  try {
    for (const written of paths) {
      if (signal.aborted) break;
      const there = await findClip(written, folders);
      if (!there.ok) continue;
      found.set(written, pathToFileURL(there.file).href);
      reader ??= createReader();
      readings.set(written, await reader.read(there.file, signal));
    }
  } catch (cause) {
    if (!signal.aborted) throw cause;
  } finally {
    await reader?.close();
  }
  return { readings, found };
}
