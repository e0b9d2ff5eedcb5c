/**
 * What an entry's place in the file makes of it: 'kit/lenses/long-200' is a lens, 'shots/drift' a
 * shot, 'deliver' a field of the plan. The one table of where entries live.
 */
import type { GroupName } from '../figures/named.ts';
import { type DefName, SHAPES } from '../plan/generated/shapes.ts';
import type { EntryId } from '../plan/place.ts';
import type { Group } from '../plan/shape.ts';
import { DUPLICATE_MARK } from './store.ts';

/** A place that holds named entries, and what each of them is. */
export interface Home {
  readonly group: GroupName | 'cuts' | 'clips';
  readonly def: DefName;
}

export const HOMES: Readonly<Record<string, Home>> = {
  'kit/bodies': { group: 'bodies', def: 'body' },
  'kit/lenses': { group: 'lenses', def: 'lens' },
  'kit/tubes': { group: 'tubes', def: 'tube' },
  'kit/converters': { group: 'converters', def: 'converter' },
  'kit/close-ups': { group: 'close-ups', def: 'close-up' },
  'kit/filters': { group: 'filters', def: 'filter' },
  'kit/heads': { group: 'heads', def: 'head' },
  'kit/stands': { group: 'stands', def: 'stand' },
  rigs: { group: 'rigs', def: 'rig' },
  lights: { group: 'lights', def: 'light' },
  subjects: { group: 'subjects', def: 'subject' },
  shots: { group: 'shots', def: 'shot' },
  'edit/cuts': { group: 'cuts', def: 'cut' },
  clips: { group: 'clips', def: 'clip' },
};

/** Where the entries of a group live. */
export const homeOf: Readonly<Record<GroupName, string>> = Object.fromEntries(
  Object.entries(HOMES).map(([home, { group }]) => [group, home]),
) as Record<GroupName, string>;

/** Groups that other files may bring in. */
export const SHARED_GROUPS: ReadonlySet<Group> = new Set([
  'bodies',
  'lenses',
  'tubes',
  'converters',
  'close-ups',
  'filters',
  'heads',
  'stands',
  'rigs',
  'lights',
  'subjects',
]);

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

/** The id without the mark of a second entry of the same name. */
export function plainId(id: EntryId): EntryId {
  const at = id.indexOf(DUPLICATE_MARK);
  return at < 0 ? id : id.slice(0, at);
}

export function entryKindOf(id: EntryId): EntryKind {
  const path = plainId(id).split('/');
  const [section = '', second, ...rest] = path;
  if (second === undefined) {
    if (own(HOMES, section) || own(OUTER, section)) return { kind: 'container' };
    return Object.hasOwn(SHAPES.plan.keys, section)
      ? { kind: 'key', def: 'plan', key: section }
      : { kind: 'unknown', def: 'plan', key: section };
  }
  const outer = own(OUTER, section);
  const homeId = outer ? `${section}/${second}` : section;
  const home = own(HOMES, homeId);
  if (!home) {
    if (!outer) return { kind: 'unknown', def: 'plan', key: section };
    const known = Object.hasOwn(SHAPES[outer].keys, second);
    return { kind: known ? 'key' : 'unknown', def: outer, key: second };
  }
  const names = outer ? rest : [second, ...rest];
  if (names.length === 0) return { kind: 'container' };
  // A name that holds a slash is no name; the whole of it is what the text says.
  const name = names.join('/');
  return home.group === 'clips' ? { kind: 'clips', name } : { kind: 'entry', home, name };
}
