/** Results kept for what many shots have in common: one rig, set alike. */

/** Results kept for one object; a plan whose shots are all set otherwise starts anew after these. */
const MOST_KEPT = 64;

/**
 * `work`, a pure function of plain data and numbers, with its last results kept for as long as
 * the data is: the same object and the same numbers give the same result.
 */
export function remembered<K extends object, N extends readonly number[], T>(
  work: (of: K, ...numbers: N) => T,
): (of: K, ...numbers: N) => T {
  const kept = new WeakMap<K, Map<string, { readonly result: T }>>();
  return (of, ...numbers) => {
    let results = kept.get(of);
    if (!results) {
      results = new Map();
      kept.set(of, results);
    }
    const key = numbers.join(' ');
    let found = results.get(key);
    if (!found) {
      found = { result: work(of, ...numbers) };
      if (results.size >= MOST_KEPT) results.clear();
      results.set(key, found);
    }
    return found.result;
  };
}
