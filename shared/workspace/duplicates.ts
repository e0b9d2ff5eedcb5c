/** Names that are defined twice: across the files that a plan uses, or among the parts of rigs. */
import { idOf } from '../plan/entry-id.ts';
import { type FileId, fileName, type Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { SHARED_SPACES } from './entry-kinds.ts';
import type { Names } from './names.ts';
import { shapeFinding, type TextFinding } from './text-findings.ts';

/**
 * The later definition of each name, with the first beside it. Of two files, the one that uses the
 * other is the later, since its author can still choose another name.
 */
export function duplicateNames(names: Names, file: FileId): TextFinding[] {
  const files = [...names.reaches(file)].reverse();
  return SHARED_SPACES.flatMap((groups) => {
    const first = new Map<string, Place>();
    return files.flatMap((one) =>
      groups.flatMap((group) =>
        names.namesOf(one, group).flatMap((name): TextFinding[] => {
          const entry = idOf(group, name);
          const at: Place = { file: one, entry, path: [], part: 'key' };
          const before = first.get(name);
          if (!before) {
            first.set(name, at);
            return [];
          }
          // A second entry of the same name in the same group has its own finding.
          if (before.file === one && before.entry === entry) return [];
          return [duplicate(name, at, before)];
        }),
      ),
    );
  });
}

function duplicate(name: string, at: Place, first: Place): TextFinding {
  const across = first.file !== at.file;
  return shapeFinding(
    {
      rule: 'duplicate-name',
      code: across ? 'duplicate-across' : 'duplicate-part',
      at,
      args: { key: name, ...(across && { file: fileName(first.file) }) },
      fixes: [],
    },
    [{ at: first, words: message`the first one` }],
  );
}
