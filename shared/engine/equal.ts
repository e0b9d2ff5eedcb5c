/**
 * Structural equality of plain data (records, arrays, maps, scalars), for the early cut-off: a
 * recomputed value that says the same keeps everything that follows from it. Keys in another order
 * say something else: checks are ticked, modes tried and findings told in the order of the text.
 */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    return a.every((item, index) => sameData(item, b[index]));
  }
  if (a instanceof Map || b instanceof Map) {
    if (!(a instanceof Map) || !(b instanceof Map) || a.size !== b.size) return false;
    const others = b.entries();
    for (const [key, value] of a) {
      const [otherKey, other] = others.next().value as [unknown, unknown];
      if (!Object.is(key, otherKey) || !sameData(value, other)) return false;
    }
    return true;
  }
  const left = a as Record<string, unknown>;
  const right = b as Record<string, unknown>;
  const [keys, others] = [Object.keys(left), Object.keys(right)];
  if (keys.length !== others.length) return false;
  return keys.every((key, index) => key === others[index] && sameData(left[key], right[key]));
}
