/** Ids of entries, made of their group and name and taken apart again: 'shots/drift'. */
import { ENTRIES } from './generated/entries.ts';
import type { AnyGroup } from './generated/names.ts';
import type { EntryId } from './place.ts';

/** Groups that are held in a place of their own, and not in an entry of another. */
export type HeldGroup = Exclude<AnyGroup, 'recordings'>;

/** Where the entries of a group live: 'kit/tubes', 'shots'. */
export const homeOf = Object.fromEntries(
  Object.entries(ENTRIES).flatMap(([group, { home }]) => (home === null ? [] : [[group, home]])),
) as Readonly<Record<HeldGroup, string>>;

export const idOf = (group: HeldGroup, name: string): EntryId => `${homeOf[group]}/${name}`;

export const isOf = (group: HeldGroup, id: EntryId): boolean =>
  id.charAt(homeOf[group].length) === '/' && id.startsWith(homeOf[group]);

/** The name of an entry that is known to be of the group. */
export const nameOf = (group: HeldGroup, id: EntryId): string => id.slice(homeOf[group].length + 1);
