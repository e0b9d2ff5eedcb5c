/** What stands under the same key in other entries of the plan and of the files that it uses. */

import { keyOfEntry } from '../../plan/entry-id.ts';
import { nodeAt } from '../../text/path.ts';
import type { Node, Path } from '../../text/tree.ts';
import { entryKindOf } from '../../workspace/entry-kinds.ts';
import type { Where } from './where.ts';

/** Entries that are looked through, the nearest first: a plan of thousands of shots repeats itself. */
const MOST_ENTRIES = 120;

interface SeenValue {
  readonly text: string;
  /** The entry that has it. */
  readonly of: string;
  readonly times: number;
}

/** Scalars by how often they stand there; names of the plan's own on the way may be any. */
export function valuesElsewhere({ context, file, place }: Where): readonly SeenValue[] {
  const { entries, names } = context.analysis;
  const kind = entryKindOf(place.entry);
  const seen = new Map<string, { of: string; times: number }>();
  const add = (text: string, of: string) => {
    const known = seen.get(text);
    if (known) known.times++;
    else seen.set(text, { of, times: 1 });
  };
  let left = MOST_ENTRIES;
  for (const one of names.reaches(file)) {
    for (const ref of entries.list(one)) {
      if (left <= 0) break;
      const isKin =
        kind.kind === 'entry'
          ? ref.kind.kind === 'entry' && ref.kind.home.def === kind.home.def
          : ref.id === place.entry;
      if (!isKin) continue;
      left--;
      const node = entries.node(one, ref);
      for (const text of scalarsAt(node, place.path)) add(text, keyOfEntry(ref.id));
    }
  }
  return [...seen]
    .map(([text, { of, times }]) => ({ text, of, times }))
    .sort((a, b) => b.times - a.times);
}

/** Scalars at a path whose steps in a mapping by name, or in a list, may be any other as well. */
function scalarsAt(node: Node | null, path: Path): string[] {
  const direct = nodeAt(node, path);
  if (direct?.kind === 'scalar') return [direct.text];
  const [first, ...rest] = path;
  if (node === null || first === undefined) return [];
  if (node.kind === 'seq') return node.items.flatMap((item) => scalarsAt(item, rest));
  if (node.kind === 'map' && !node.pairs.some(({ key }) => key.text === first) && rest.length > 0)
    return node.pairs.flatMap(({ value }) => scalarsAt(value, rest));
  return [];
}
