/** Entries of all given files by a part of their name. */

import type { FoundEntry } from '../../api/navigation.ts';
import type { Context } from '../../workspace/context.ts';
import { nounOf } from '../../workspace/entry-kinds.ts';
import { located } from './references.ts';

/** More than this nobody looks through. */
const MOST_FOUND = 200;

export function findEntries(context: Context, query: string): readonly FoundEntry[] {
  const wanted = query.toLowerCase();
  const found: FoundEntry[] = [];
  for (const file of context.store.files())
    for (const { id, kind } of context.analysis.entries.list(file)) {
      if (kind.kind !== 'entry' || !isSubsequence(wanted, kind.name)) continue;
      const noun = nounOf(kind.home.group);
      const place = { file, entry: id, path: [], part: 'key' as const };
      found.push({ ...located(context, place), name: kind.name, noun });
      if (found.length === MOST_FOUND) return found;
    }
  return found;
}

/** Editors narrow down by letters in order, not by whole words. */
function isSubsequence(wanted: string, name: string): boolean {
  let at = 0;
  for (const letter of name) if (letter === wanted[at]) at++;
  return at === wanted.length;
}
