import type { Place } from '../plan/place.ts';
import { placeKey } from './shot-rule.ts';

/** What several shots share is said once: the first of each place, nulls left out. */
export function oncePerPlace<T extends { readonly at: Place }>(
  items: readonly (T | null)[],
): readonly T[] {
  const seen = new Set<string>();
  return items.filter((item): item is T => {
    if (item === null || seen.has(placeKey(item.at))) return false;
    seen.add(placeKey(item.at));
    return true;
  });
}
