/** The names that an entry refers to, as the ids of what they would be: 'kit/tubes/tube-36'. */
import type { GroupName } from '../figures/reader.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { referencesIn } from '../plan/references.ts';
import type { Entries } from './entries.ts';
import { homeOf } from './entry-kinds.ts';

export function usedNames(entries: Entries, file: FileId, id: EntryId): readonly EntryId[] {
  const lowered = entries.lowered(file, id);
  if (lowered?.kind.kind !== 'entry' || lowered.def === null) return [];
  return referencesIn(lowered.def, lowered.value).flatMap(({ name, groups }) =>
    groups.flatMap((group) =>
      group === 'recordings' ? [] : [`${homeOf[group as GroupName]}/${name}`],
    ),
  );
}
