/** Names across files: the files that a file uses, directly or not, and where a name is defined. */

import { sameData } from '../engine/equal.ts';
import type { Input, Query } from '../engine/graph.ts';
import type { Named } from '../figures/named.ts';
import { entryAt, idOf, isOf } from '../plan/entry-id.ts';
import type { Field } from '../plan/field.ts';
import type { GroupName } from '../plan/generated/names.ts';
import type { GroupTypes } from '../plan/generated/types.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import { isUnread } from '../text/problems.ts';
import type { Entries } from './entries.ts';
import { entryKindOf, isShared } from './entry-kinds.ts';
import { type Key, keyOf, splitKey } from './keys.ts';
import type { Store } from './store.ts';
import { resolveUse, type UseTarget } from './use-path.ts';

/** One line of `use:`. */
export interface Use {
  readonly written: string;
  readonly at: Place;
  readonly target: UseTarget;
}

interface Definition {
  readonly file: FileId;
  readonly entry: EntryId;
}

export class Names {
  readonly #entries: Entries;
  readonly #store: Store;
  readonly #uses: Query<readonly Use[]>;
  readonly #reaches: Query<readonly FileId[]>;
  readonly #names: Query<readonly string[], Key<GroupName>>;
  readonly #broken: Query<boolean, Key<GroupName>>;
  readonly #find: Query<Definition | undefined, Key>;
  readonly #named: Query<Named<GroupTypes[GroupName]> | undefined, Key>;
  /** How often the workspace's folders have changed: whoever asked for a root asks again. */
  readonly #roots: Input<number>;

  constructor(store: Store, entries: Entries, rootsOf: (file: FileId) => readonly FileId[]) {
    this.#store = store;
    this.#entries = entries;
    const { graph } = store;
    this.#roots = graph.input('roots', 0);
    this.#uses = graph.query(
      'uses',
      (file) => {
        this.#roots.get('');
        return this.#usesOf(file, rootsOf(file));
      },
      sameData,
    );
    this.#reaches = graph.query('reaches', (file) => this.#reachesOf(file), sameData);
    this.#names = graph.query('names', (key) => this.#namesOf(...splitKey(key)), sameData);
    this.#broken = graph.query('broken', (key) => this.#isBrokenIn(...splitKey(key)));
    this.#find = graph.query('find', (key) => this.#findIn(...splitKey(key)), sameData);
    this.#named = graph.query('named', (key) => this.#namedIn(...splitKey(key)), sameData);
  }

  rootsChanged(): void {
    this.#roots.set('', this.#roots.get('') + 1);
  }

  uses(file: FileId): readonly Use[] {
    return this.#uses(file);
  }

  /** `file` and all that it uses, directly or not, nearest first; circles are walked once. */
  reaches(file: FileId): readonly FileId[] {
    return this.#reaches(file);
  }

  /**
   * Whether something that `file` uses could not be read (yet): then a name that isn't found may
   * well stand there, and what is missing has its own finding.
   */
  isIncomplete(file: FileId): boolean {
    return this.reaches(file).some(
      (one) =>
        this.#store.state(one).state !== 'given' || this.uses(one).some(({ target }) => !target.ok),
    );
  }

  /** Whether some entry among those of a group can't be read as the text stands. */
  isBroken(file: FileId, group: GroupName): boolean {
    return this.#scope(file, group).some((one) => this.#broken(keyOf(one, group)));
  }

  /** Names of a group that `file` can refer to. */
  namesIn(file: FileId, group: GroupName): readonly string[] {
    const names = this.#scope(file, group).flatMap((one) => this.#names(keyOf(one, group)));
    return [...new Set(names)];
  }

  /** Names of a group that `file` itself defines. */
  namesOf(file: FileId, group: GroupName): readonly string[] {
    return this.#names(keyOf(file, group));
  }

  define(file: FileId, group: GroupName, name: string): Definition | undefined {
    return this.#find(keyOf(file, idOf(group, name)));
  }

  find<G extends GroupName>(
    file: FileId,
    group: G,
    name: string,
  ): Named<GroupTypes[G]> | undefined {
    return this.#named(keyOf(file, idOf(group, name))) as Named<GroupTypes[G]> | undefined;
  }

  #scope(file: FileId, group: GroupName): readonly FileId[] {
    return isShared(group) ? this.reaches(file) : [file];
  }

  #usesOf(file: FileId, roots: readonly FileId[]): readonly Use[] {
    const field = this.#entries.lowered(file, entryAt('use'))?.value as
      | Field<readonly Field<string>[]>
      | undefined;
    if (field?.state !== 'known') return [];
    return field.value.flatMap((item) =>
      item.state === 'known'
        ? [{ written: item.value, at: item.at, target: resolveUse(file, item.value, ...roots) }]
        : [],
    );
  }

  #reachesOf(file: FileId): readonly FileId[] {
    const reached = [file];
    // Grows while it is walked.
    for (const next of reached)
      for (const { target } of this.uses(next))
        if (target.ok && !reached.includes(target.file)) reached.push(target.file);
    return reached;
  }

  #namesOf(file: FileId, group: GroupName): readonly string[] {
    return this.#entries
      .list(file)
      .flatMap(({ kind }) =>
        kind.kind === 'entry' && kind.home.group === group ? [kind.name] : [],
      );
  }

  #isBrokenIn(file: FileId, group: GroupName): boolean {
    return this.#store
      .ids(file)
      .some((id) => isOf(group, id) && this.#entries.parsed(file, id).problems.some(isUnread));
  }

  /** The same for all who name it, so that what is worked out of it can be shared. */
  #namedIn(file: FileId, id: EntryId): Named<GroupTypes[GroupName]> | undefined {
    const kind = entryKindOf(id);
    const found = this.#find(keyOf(file, id));
    if (!found || kind.kind !== 'entry') return undefined;
    const lowered = this.#entries.lowered(found.file, found.entry);
    if (lowered?.def === null || lowered === undefined) return undefined;
    const { name, home } = kind;
    return { name, group: home.group as GroupName, ...found, fields: lowered.value as never };
  }

  #findIn(file: FileId, id: EntryId): Definition | undefined {
    const kind = entryKindOf(id);
    if (kind.kind !== 'entry') return undefined;
    for (const one of this.#scope(file, kind.home.group as GroupName))
      if (this.#store.state(one).state === 'given' && this.#entries.source(one, id))
        return { file: one, entry: id };
    return undefined;
  }
}
