/** Files that are dropped onto the clips of a shot, as entries of its list. */
import type { DroppedClips } from '../api/clips.ts';
import type { Position } from '../api/located.ts';
import { filePath, flowMap } from '../bring-back/write.ts';
import type { FileId } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { clipsIn } from '../workspace/clips.ts';
import type { Context } from '../workspace/context.ts';
import { entryKindOf } from '../workspace/entry-kinds.ts';
import { locatedEdits } from '../workspace/located-edits.ts';
import { pathBetween, resolveUse } from '../workspace/use-path.ts';

/**
 * @param roots folders that the clips may lie in
 * @param dropped URIs of the files, in their order
 */
export function dropClips(
  context: Context,
  file: FileId,
  position: Position,
  dropped: readonly FileId[],
  roots: readonly FileId[],
): DroppedClips {
  const { analysis, store } = context;
  const text = store.text(file);
  const chunk = text && store.chunkIds(file)[text.locate(position).index];
  if (chunk === undefined || entryKindOf(chunk).kind !== 'clips')
    return { edits: [], why: message`Drop clips onto a shot below \`clips\`.` };
  const value = analysis.entries.parsed(file, chunk).tree?.pairs[0]?.value ?? null;
  const isEmpty = value === null || (value.kind === 'scalar' && value.text === '');
  const list = value?.kind === 'seq' ? value.items : null;
  if (!isEmpty && list === null)
    return {
      edits: [],
      why: message`The clips of the shot can't be read. Make them a list first.`,
    };
  const paths = dropped.map((clip) => pathBetween(file, clip));
  const inside = paths.filter(
    (path): path is string => path !== null && resolveUse(file, path, ...roots).ok,
  );
  const known = new Set(clipsIn(analysis, file).map(({ path }) => path.replace(/^(?:\.\/)+/, '')));
  const news = [...new Set(inside)].filter((path) => !known.has(path));
  const items = news.map((path) => flowMap([['file', filePath(path)]]));
  const at = (path: readonly number[]) => ({ file, entry: chunk, path });
  const edits =
    list !== null
      ? items.flatMap((item, index) =>
          locatedEdits(store, { op: 'set', at: at([list.length + index]), text: item }),
        )
      : items.length > 0
        ? locatedEdits(store, { op: 'set', at: at([]), text: `[${items.join(', ')}]` })
        : [];
  if (inside.length < paths.length)
    return { edits, why: message`Clips outside the workspace were left out.` };
  if (news.length < inside.length)
    return { edits, why: message`Clips that the plan lists already were left out.` };
  return { edits };
}
