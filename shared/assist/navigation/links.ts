/** Paths that a plan writes, of plans that it uses and of clips, with the files that they lead to. */
import type { FileLink } from '../../api/navigation.ts';
import type { FileId } from '../../plan/place.ts';
import { clipsIn } from '../../workspace/clips.ts';
import type { Context } from '../../workspace/context.ts';
import { resolveUse } from '../../workspace/use-path.ts';

/**
 * Only what lies inside the workspace, by the path as it is written: nothing is looked up on a disk.
 * A used file that was refused is no link: its finding says why. Nor is a clip in the folder of the
 * media, which only the check of the clips is told of.
 */
export function linksIn(context: Context, file: FileId, root: FileId): readonly FileLink[] {
  const { analysis, store, locator } = context;
  const used = analysis.names
    .uses(file)
    .flatMap(({ at, target }): FileLink[] =>
      target.ok && store.state(target.file).state !== 'refused'
        ? [{ range: locator.rangeOf(at), file: target.file }]
        : [],
    );
  const clips = clipsIn(analysis, file).flatMap(({ at, path }): FileLink[] => {
    const target = resolveUse(file, path, root);
    return target.ok ? [{ range: locator.rangeOf(at), file: target.file }] : [];
  });
  return [...used, ...clips];
}
