/** Kept results: of rigs that many shots share, and of data that has not changed. */

/**
 * Number of results that are kept for one object. A plan in which every shot has other settings
 * starts again after these.
 */
const MOST_KEPT = 64;

/**
 * `work`, a pure function of plain data and numbers, with its last results kept for as long as
 * the data is: the same object and the same numbers give the same result. `most` results are kept
 * for one object.
 */
export function remembered<K extends object, N extends readonly number[], T>(
  work: (of: K, ...numbers: N) => T,
  most = MOST_KEPT,
): (of: K, ...numbers: N) => T {
  const kept = new WeakMap<K, Map<string | number, { readonly result: T }>>();
  return (of, ...numbers) => {
    let results = kept.get(of);
    if (!results) {
      results = new Map();
      kept.set(of, results);
    }
    // A number is its own key; to write several out costs less than to look them up one by one.
    const key = numbers.length === 1 ? numbers[0]! : numbers.join(' ');
    let found = results.get(key);
    if (!found) {
      found = { result: work(of, ...numbers) };
      if (results.size >= most) results.clear();
      results.set(key, found);
    }
    return found.result;
  };
}

function sameItems(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return false;
  return true;
}

/** The same objects, or lists of them. */
function sameInputs(a: readonly unknown[], b: readonly unknown[]): boolean {
  for (let index = 0; index < a.length; index++) {
    const [one, other] = [a[index], b[index]];
    if (one === other) continue;
    if (!Array.isArray(one) || !Array.isArray(other) || !sameItems(one, other)) return false;
  }
  return true;
}

/**
 * `work`, a pure function of data that is never changed, with its last result for `of` kept for as
 * long as `of` is: it stands while the other inputs are the same objects, a list the same list or
 * one of the same objects.
 */
export function lastOf<K extends object, I extends readonly unknown[], T>(
  work: (of: K, ...inputs: I) => T,
): (of: K, ...inputs: I) => T {
  const kept = new WeakMap<K, { readonly inputs: I; readonly result: T }>();
  return (of, ...inputs) => {
    const last = kept.get(of);
    if (last && sameInputs(last.inputs, inputs)) return last.result;
    const result = work(of, ...inputs);
    kept.set(of, { inputs, result });
    return result;
  };
}
