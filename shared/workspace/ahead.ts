/** What findings need is calculated entry by entry, so that a host can do other things in between. */
import type { Graph, Query } from '../engine/graph.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { type Key, keyOf } from './keys.ts';

interface Work {
  /** Calculates what findings need of an entry. */
  of(entry: Key): void;
  /** The findings of a group of entries, which follow from that. */
  readonly group: Query<unknown, Key<string>>;
}

export class Ahead {
  readonly #graph: Graph;
  readonly #work: Work;
  readonly #groupSize: number;
  /** How many entries of a list, from the first, are done, since which change. */
  readonly #done = new WeakMap<
    readonly EntryId[],
    { readonly next: number; readonly at: number }
  >();

  constructor(graph: Graph, work: Work, groupSize: number) {
    this.#graph = graph;
    this.#work = work;
    this.#groupSize = groupSize;
  }

  /**
   * Goes on with the entries of a file until `until` says so.
   *
   * @param ids the same list for as long as the file has these entries
   * @returns whether nothing is left
   */
  prepare(file: FileId, ids: readonly EntryId[], until: () => boolean): boolean {
    const at = this.#graph.changes;
    const before = this.#done.get(ids);
    let next = before?.at === at ? before.next : 0;
    while (next < ids.length && !until()) {
      // An edit of one shot leaves all other groups as they are, one of a lens perhaps none.
      if (next % this.#groupSize === 0 && this.#isAtHand(file, next / this.#groupSize))
        next += this.#groupSize;
      else this.#one(keyOf(file, ids[next++]!));
    }
    this.#done.set(ids, { next, at });
    return next >= ids.length;
  }

  #isAtHand(file: FileId, group: number): boolean {
    return this.#graph.isAtHand(this.#work.group, keyOf(file, String(group)));
  }

  #one(entry: Key): void {
    try {
      this.#work.of(entry);
    } catch {
      // A failure here happens again when the entry is asked for, and is reported then.
    }
  }
}
