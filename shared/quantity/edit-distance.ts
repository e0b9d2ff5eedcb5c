/**
 * Optimal string alignment distance: insertions, deletions, substitutions and exchanged
 * neighbours each count one. Texts over 64 characters are told apart without counting.
 * Source: Damerau, CACM 7(3), 1964; the restricted form.
 */
export function editDistance(a: string, b: string): number {
  if (a === b) return 0;
  if (a.length > 64 || b.length > 64) return Number.POSITIVE_INFINITY;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let cost = Math.min(row[j - 1]! + 1, last[j]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, before[j - 2]! + 1);
      }
      row.push(cost);
    }
    before = last;
    last = row;
  }
  return last[b.length]!;
}
