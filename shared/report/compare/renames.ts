/** Which entry that is gone came back under another name. */

import type { FieldTexts } from '../../api/compared.ts';
import { renamed } from './field-texts.ts';

type Section = ReadonlyMap<string, FieldTexts>;

/** This much of what both say has to be the same; under it they are two things. */
const ALIKE = 0.6;
/** One that says less than this is the same only where it says the very same. */
const LEAST_SAID = 2;

interface Pair {
  readonly before: string;
  readonly after: string;
  readonly alike: number;
  readonly order: number;
}

/**
 * Old name to new, the most alike first; the same pairs from either side.
 *
 * @param rename what the names that entries refer to are called now
 */
export function renamesIn(
  before: Section,
  after: Section,
  rename: (name: string) => string,
): ReadonlyMap<string, string> {
  const gone = [...before.keys()].filter((name) => !after.has(name));
  const come = [...after.keys()].filter((name) => !before.has(name));
  const pairs = gone.flatMap((old, i) =>
    come.flatMap((name, j): Pair[] => {
      const alike = likeness(before.get(old)!, after.get(name)!, rename);
      return alike >= ALIKE ? [{ before: old, after: name, alike, order: i + j }] : [];
    }),
  );
  pairs.sort((a, b) => b.alike - a.alike || a.order - b.order || byNames(a, b));
  const found = new Map<string, string>();
  const taken = new Set<string>();
  for (const pair of pairs) {
    if (found.has(pair.before) || taken.has(pair.after)) continue;
    found.set(pair.before, pair.after);
    taken.add(pair.after);
  }
  return found;
}

/** The same order with the sides swapped. */
const byNames = (a: Pair, b: Pair): number => {
  const [left, right] = [a, b].map(({ before, after }) => [before, after].sort().join(' '));
  return left! < right! ? -1 : left! > right! ? 1 : 0;
};

function likeness(before: FieldTexts, after: FieldTexts, rename: (name: string) => string): number {
  const old = new Map(
    [...before].map(([path, text]) => [renamed(path, rename), renamed(text, rename)]),
  );
  const paths = new Set([...old.keys(), ...after.keys()]);
  const same = [...paths].filter((path) => old.get(path) === after.get(path)).length;
  const isLittle = Math.min(old.size, after.size) < LEAST_SAID;
  return paths.size === 0 || (isLittle && same < paths.size) ? 0 : same / paths.size;
}
