/** Paths that a plan writes, once files have other places: of plans that it uses, and of clips. */
import type { LocatedEdit } from '../../api/located.ts';
import { filePath } from '../../bring-back/write.ts';
import type { FileId, Place } from '../../plan/place.ts';
import { clipsIn } from '../../workspace/clips.ts';
import type { Context } from '../../workspace/context.ts';
import { locatedEdits } from '../../workspace/located-edits.ts';
import { pathBetween, resolveUse } from '../../workspace/use-path.ts';

/**
 * Edits of the text as it is now. Of clips only those that move themselves: where the plan moves,
 * nobody here knows whether a clip was beside it or in the folder of the media.
 *
 * @param to where each file is then; a file that stays is itself
 */
export function movedPaths(
  context: Context,
  file: FileId,
  to: (file: FileId) => FileId,
): readonly LocatedEdit[] {
  const { analysis, store } = context;
  const [at, root] = [to(file), rootOf(file)];
  const editsFor = (place: Place, written: string, target: FileId): readonly LocatedEdit[] => {
    const then = to(target);
    // Both moved together, or the path is written so that it holds.
    if (leadsTo(at, written, then)) return [];
    const path = pathBetween(at, then);
    if (path === null) return [];
    const dotted = written.startsWith('./') && !path.startsWith('../') ? `./${path}` : path;
    return locatedEdits(store, { op: 'set', at: place, text: filePath(dotted) });
  };
  const used = analysis.names
    .uses(file)
    .flatMap((use) => (use.target.ok ? editsFor(use.at, use.written, use.target.file) : []));
  const clips = clipsIn(analysis, file).flatMap((clip) => {
    const target = resolveUse(file, clip.path, root);
    return target.ok && to(target.file) !== target.file
      ? editsFor(clip.at, clip.path, target.file)
      : [];
  });
  return [...used, ...clips];
}

/** All of the file's own file system: whether a path leads out of the workspace is said by a finding. */
const rootOf = (file: FileId): FileId => /^[^/]*(?:\/\/[^/]*)?\//.exec(file)?.[0] ?? file;

const leadsTo = (from: FileId, written: string, to: FileId): boolean => {
  const target = resolveUse(from, written, rootOf(from));
  return target.ok && target.file === to;
};
