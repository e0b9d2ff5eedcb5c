/**
 * The findings of each file as they were shown last, in the order of the text. An edit that moves no
 * line places again only the findings that are new or that name a chunk that it changed.
 */

import type { LocatedFinding } from '../api/located.ts';
import type { FileId } from '../plan/place.ts';
import type { Finding } from '../rules/rule.ts';
import type { LengthUnit, Say } from '../say/say.ts';
import type { Chunk } from '../text/chunk.ts';
import { byPosition, type FindingLocator } from './located-findings.ts';
import type { Store } from './store.ts';

interface Shown {
  readonly layout: number;
  readonly lengths: LengthUnit;
  /** As found, those that stand elsewhere among them. */
  readonly found: readonly Finding[];
  /** Index for index with `found`; null: it stands in another file. */
  readonly located: readonly (LocatedFinding | null)[];
  /** In the order of the text. */
  readonly sorted: readonly LocatedFinding[];
  readonly standing: Standing;
}

/** What the placed findings of one file stand on. */
interface Standing {
  /** Those that name a chunk; a chunk that is changed is another one. */
  readonly naming: Map<Chunk, Set<Finding>>;
  /** To be placed again: a chunk that they name was changed, or they stand with none. */
  readonly loose: Set<Finding>;
}

/** What an edit left of the findings before it. */
interface Renewed {
  readonly located: readonly (LocatedFinding | null)[];
  readonly added: readonly LocatedFinding[];
  readonly removed: ReadonlySet<LocatedFinding>;
}

/** So many that came or went together are looked past. */
const LOOKED_PAST = 4;

export class ShownFindings {
  readonly #store: Store;
  readonly #places: FindingLocator;
  readonly #say: Say;
  readonly #shown = new Map<FileId, Shown>();

  constructor(store: Store, places: FindingLocator, say: Say) {
    this.#store = store;
    this.#places = places;
    this.#say = say;
  }

  /** Those of `found` that stand in `file`, in the order of its text. */
  of(file: FileId, found: readonly Finding[]): readonly LocatedFinding[] {
    this.#loosen();
    const { layout } = this.#store;
    const { lengths } = this.#say;
    const before = this.#shown.get(file);
    const isFirm = before?.layout === layout && before.lengths === lengths;
    if (isFirm && before.found === found && before.standing.loose.size === 0) return before.sorted;
    const standing = isFirm ? before.standing : { naming: new Map(), loose: new Set<Finding>() };
    const place = (finding: Finding) => this.#place(file, finding, standing);
    const renewed = isFirm ? this.#renewed(before, found, place) : undefined;
    const located = renewed?.located ?? found.map(place);
    const sorted = (renewed && before && merged(before.sorted, renewed)) ?? inOrder(located);
    if (this.#store.text(file))
      this.#shown.set(file, { layout, lengths, found, located, sorted, standing });
    return sorted;
  }

  /** What names a chunk that was changed since isn't placed any more. */
  #loosen(): void {
    const replaced = this.#store.takeReplaced();
    for (const [file, { standing }] of this.#shown) {
      if (!this.#store.text(file)) this.#shown.delete(file);
      for (const chunk of replaced) {
        for (const finding of standing.naming.get(chunk) ?? []) standing.loose.add(finding);
        standing.naming.delete(chunk);
      }
    }
  }

  #renewed(
    { found: before, located: shown, standing }: Shown,
    found: readonly Finding[],
    place: (finding: Finding) => LocatedFinding | null,
  ): Renewed {
    const located: (LocatedFinding | null)[] = [];
    const fresh = new Map<Finding, LocatedFinding | null>();
    const gone: Finding[] = [];
    const removed = new Set<LocatedFinding>();
    let old = 0;
    const drop = (until: number): void => {
      for (; old < Math.min(until, before.length); old++) {
        gone.push(before[old]!);
        if (shown[old]) removed.add(shown[old]!);
      }
    };
    for (const [index, finding] of found.entries()) {
      drop(old + stepsTo(before, old, finding));
      const isThere = finding === before[old];
      if (isThere && !standing.loose.has(finding)) {
        located.push(shown[old++]!);
        continue;
      }
      const isInserted = !isThere && stepsTo(found, index, before[old]) > 0;
      if (!isInserted) drop(old + 1);
      const one = place(finding);
      located.push(one);
      fresh.set(finding, one);
    }
    drop(before.length);
    for (const finding of gone) if (!fresh.has(finding)) this.#forget(finding, standing);
    return { located, added: [...fresh.values()].filter((one) => one !== null), removed };
  }

  #place(file: FileId, finding: Finding, { naming, loose }: Standing): LocatedFinding | null {
    if (finding.at.file !== file) return null;
    const located = this.#places.locate(finding);
    const chunks = this.#places.chunksOf(finding);
    if (!chunks) {
      loose.add(finding);
      return located;
    }
    loose.delete(finding);
    for (const chunk of chunks) {
      const those = naming.get(chunk);
      if (those) those.add(finding);
      else naming.set(chunk, new Set([finding]));
    }
    return located;
  }

  #forget(finding: Finding, { naming, loose }: Standing): void {
    loose.delete(finding);
    for (const chunk of this.#places.chunksOf(finding) ?? []) naming.get(chunk)?.delete(finding);
  }
}

/** How many steps on from `at` a finding is; 0: it is at `at`, or nowhere near. */
function stepsTo(list: readonly Finding[], at: number, finding: Finding | undefined): number {
  for (let steps = 0; steps <= LOOKED_PAST; steps++) if (list[at + steps] === finding) return steps;
  return 0;
}

const inOrder = (located: readonly (LocatedFinding | null)[]): readonly LocatedFinding[] =>
  located.filter((one) => one !== null).sort(byPosition);

/** So many new ones are sorted with the others faster than put between them. */
const FEW = 64;

/** The findings in order again; undefined: two are at the same place, and what was found first is first. */
function merged(
  before: readonly LocatedFinding[],
  { added, removed }: Renewed,
): readonly LocatedFinding[] | undefined {
  if (added.length === 0 && removed.size === 0) return before;
  if (added.length > FEW) return undefined;
  const fresh = [...added].sort(byPosition);
  const all: LocatedFinding[] = [];
  let next = 0;
  for (const one of before) {
    if (removed.has(one)) continue;
    for (; next < fresh.length; next++) {
      const order = byPosition(fresh[next]!, one);
      if (order === 0) return undefined;
      if (order > 0) break;
      all.push(fresh[next]!);
    }
    all.push(one);
  }
  return [...all, ...fresh.slice(next)];
}
