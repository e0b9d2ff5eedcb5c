/**
 * What an entry's place in the file makes of it: 'kit/lenses/long-200' is a lens, 'shots/drift' a
 * shot, 'deliver' a field of the plan. By the schema's table of kinds.
 */

import { entryAt, type HeldGroup, homeOf, keysOf, plainId } from '../plan/entry-id.ts';
import { ENTRIES } from '../plan/generated/entries.ts';
import type { AnyGroup, DefName, GroupName } from '../plan/generated/names.ts';
import { SHAPES } from '../plan/generated/shapes.ts';
import type { EntryId } from '../plan/place.ts';
import { inLanguage } from '../words/message.ts';

/** A place that holds named entries, and what each of them is. */
interface Home {
  readonly group: HeldGroup;
  readonly def: DefName;
}

const HELD = Object.keys(homeOf) as HeldGroup[];

export const HOMES: Readonly<Record<string, Home>> = Object.fromEntries(
  HELD.map((group) => [homeOf[group], { group, def: ENTRIES[group].def }]),
);

/** Whether other files may bring entries of a group in. */
export const isShared = (group: AnyGroup): boolean => ENTRIES[group].scope === 'files';

const SHARED = HELD.filter(isShared) as GroupName[];

/** The groups whose names other files may bring in, those together that share them. */
export const SHARED_SPACES: readonly (readonly GroupName[])[] = [
  ...new Set(SHARED.map((group) => ENTRIES[group].space)),
].map((space) => SHARED.filter((group) => ENTRIES[group].space === space));

/** What an entry of a group is called in a sentence, in the reader's language. */
export const nounOf = (group: AnyGroup): string => inLanguage(ENTRIES[group].noun);

/** Sections that hold groups of entries instead of entries. */
const OUTER: Readonly<Record<string, DefName>> = { kit: 'kit', edit: 'edit' };

export type EntryKind =
  /** A named entry: a lens, a shot. */
  | { readonly kind: 'entry'; readonly home: Home; readonly name: string }
  /** The clips of a shot: a list. */
  | { readonly kind: 'clips'; readonly name: string }
  /** One key of a record that is no entry of its own: `mains` of the plan, `music` of the edit. */
  | { readonly kind: 'key'; readonly def: DefName; readonly key: string }
  /** Holds entries: `shots`, `kit`, `kit/bodies`. */
  | { readonly kind: 'container' }
  /** Not of the language: `shotz`, `kit/lensez`, or below one. */
  | { readonly kind: 'unknown'; readonly def: DefName; readonly key: string };

/** A file may have a section called `__proto__` or `constructor`. */
const own = <T>(table: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(table, key) ? table[key] : undefined;

export function entryKindOf(id: EntryId): EntryKind {
  const path = keysOf(plainId(id));
  const [section = '', second, ...rest] = path;
  if (second === undefined) {
    if (own(HOMES, section) || own(OUTER, section)) return { kind: 'container' };
    return Object.hasOwn(SHAPES.plan.keys, section)
      ? { kind: 'key', def: 'plan', key: section }
      : { kind: 'unknown', def: 'plan', key: section };
  }
  const outer = own(OUTER, section);
  const homeId = outer ? entryAt(section, second) : section;
  const home = own(HOMES, homeId);
  if (!home) {
    if (!outer) return { kind: 'unknown', def: 'plan', key: section };
    const known = Object.hasOwn(SHAPES[outer].keys, second);
    return { kind: known ? 'key' : 'unknown', def: outer, key: second };
  }
  const names = outer ? rest : [second, ...rest];
  if (names.length === 0) return { kind: 'container' };
  // A name that holds a slash is no name; the whole of it is what the text says.
  const name = entryAt(...names);
  return home.group === 'clips' ? { kind: 'clips', name } : { kind: 'entry', home, name };
}
