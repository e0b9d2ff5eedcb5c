/** The names that an entry refers to, as the ids of what they would be: 'kit/tubes/tube-36'. */
import { idOf } from '../plan/entry-id.ts';
import type { EntryId } from '../plan/place.ts';
import { referencesIn } from '../plan/references.ts';
import type { Lowered } from './entries.ts';

export function usedNames(entry: Lowered | undefined): readonly EntryId[] {
  if (entry?.kind.kind !== 'entry' || entry.def === null) return [];
  const used: EntryId[] = [];
  for (const { name, groups } of referencesIn(entry.def, entry.value))
    for (const group of groups) if (group !== 'recordings') used.push(idOf(group, name));
  return used;
}
