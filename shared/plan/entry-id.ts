/** Ids of entries and of chunks of the text, made and taken apart: 'shots/drift'. */
import { ENTRIES } from './generated/entries.ts';
import type { AnyGroup } from './generated/names.ts';
import type { EntryId } from './place.ts';

/** Groups that are held in a place of their own, and not in an entry of another. */
export type HeldGroup = Exclude<AnyGroup, 'recordings'>;

/** Stands between keys. */
const STEP = '/';
/** Marks a second chunk of the same name. Not a character of names, nor of any key that is read. */
const SECOND = '\u0001';
/** Starts the ids of lines that belong nowhere: '~1'. */
const LOOSE = '~';

/** By its keys from the top. */
export const entryAt = (...keys: readonly string[]): EntryId => keys.join(STEP) as EntryId;

export const keysOf = (id: EntryId): readonly string[] => (id === '' ? [] : id.split(STEP));

/** Stands for the file as a whole. */
export const WHOLE_FILE = entryAt();

export const inside = (id: EntryId, key: string): EntryId => entryAt(id, key);

/** Without its last key; null at the top. */
export function above(id: EntryId): EntryId | null {
  const at = id.lastIndexOf(STEP);
  return at < 0 ? null : (id.slice(0, at) as EntryId);
}

export const isInside = (outer: EntryId, id: EntryId): boolean =>
  id.charAt(outer.length) === STEP && id.startsWith(outer);

/** The last key. */
export const keyOfEntry = (id: EntryId): string => id.slice(id.lastIndexOf(STEP) + 1);

/** Where the entries of a group live: 'kit/tubes', 'shots'. */
export const homeOf = Object.fromEntries(
  Object.entries(ENTRIES).flatMap(([group, { home }]) => (home === null ? [] : [[group, home]])),
) as Readonly<Record<HeldGroup, EntryId>>;

export const idOf = (group: HeldGroup, name: string): EntryId => inside(homeOf[group], name);

export const isOf = (group: HeldGroup, id: EntryId): boolean => isInside(homeOf[group], id);

/** The name of an entry that is known to be of the group. */
export const nameOf = (group: HeldGroup, id: EntryId): string => id.slice(homeOf[group].length + 1);

/** The id of the `count`th chunk of the same keys. */
export const nth = (id: EntryId, count: number): EntryId =>
  count === 1 ? id : (`${id}${SECOND}${count}` as EntryId);

export const isFirst = (id: EntryId): boolean => !id.includes(SECOND);

/** The id without the mark of a second entry of the same name. */
export const plainId = (id: EntryId): EntryId =>
  isFirst(id) ? id : (id.slice(0, id.indexOf(SECOND)) as EntryId);

/** The id of the `count`th run of lines that belong nowhere. */
export const looseId = (count: number): EntryId => `${LOOSE}${count}` as EntryId;

export const isLoose = (id: EntryId): boolean => id.startsWith(LOOSE);
