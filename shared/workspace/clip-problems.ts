/** One file listed as two clips: which shot it belongs to, and which verdict holds, nobody can tell. */
import { plainId } from '../plan/entry-id.ts';
import type { FileId, Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import type { Entries } from './entries.ts';
import { type ClipsField, clipsOf } from './listed-clips.ts';
import { shapeFinding, type TextFinding } from './text-findings.ts';

export function duplicateClips(entries: Entries, file: FileId): readonly TextFinding[] {
  const first = new Map<string, Place>();
  return entries.list(file).flatMap(({ id, kind }) => {
    if (kind.kind !== 'clips' || id !== plainId(id)) return [];
    const field = entries.lowered(file, id)?.value as ClipsField | undefined;
    return clipsOf(kind.name, field).flatMap(({ path, at }): TextFinding[] => {
      const before = first.get(path);
      if (!before) {
        first.set(path, at);
        return [];
      }
      const problem = {
        rule: 'duplicate-name',
        code: 'duplicate-clip',
        at,
        args: { key: path },
        fixes: [],
      } as const;
      return [shapeFinding(problem, [{ at: before, words: message`the first one` }])];
    });
  });
}
