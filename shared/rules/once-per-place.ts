import { type Place, samePlace } from '../plan/place.ts';
import { placeKey } from './shot-rule.ts';

/** A finding that several shots share is reported once: the first at each place, nulls left out. */
export function oncePerPlace<T extends { readonly at: Place }>(
  items: readonly (T | null)[],
): readonly T[] {
  const seen = new Set<string>();
  let last: Place | undefined;
  return items.filter((item): item is T => {
    if (item === null) return false;
    // Most shots share with the shot before, so no key is made for those.
    if (last && samePlace(item.at, last)) return false;
    last = item.at;
    const key = placeKey(item.at);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
