/** The choices and orders of a kit's pieces, each once: pieces that are alike are not told apart. */
import type { CloseUpPart, ConverterPart, TubePart } from './parts.ts';

/**
 * Every way to put `count` tubes into the gaps that the converters leave, each once: behind, between
 * and ahead of them. Of tubes that are equally long the earlier goes no farther than the later.
 */
export function placeTubes(
  tubes: readonly TubePart[],
  converters: readonly number[],
  count: number,
  visit: (gaps: readonly (readonly number[])[], lengths: readonly number[]) => void,
): void {
  const order = tubes.map((_, index) => index);
  order.sort((a, b) => tubes[b]!.lengthMm - tubes[a]!.lengthMm);
  const unused = converters.length + 1;
  const gaps: number[][] = Array.from({ length: unused }, () => []);
  const lengths = gaps.map(() => 0);
  const place = (at: number, left: number, before: number): void => {
    if (left === 0) {
      visit(gaps, lengths);
      return;
    }
    if (order.length - at < left) return;
    const index = order[at]!;
    const { lengthMm } = tubes[index]!;
    const isTwin = at > 0 && tubes[order[at - 1]!]!.lengthMm === lengthMm;
    for (let gap = isTwin ? before : 0; gap < unused; gap++) {
      const there = lengths[gap]!;
      gaps[gap]!.push(index);
      lengths[gap] = there + lengthMm;
      place(at + 1, left - 1, gap);
      lengths[gap] = there;
      gaps[gap]!.pop();
    }
    place(at + 1, left, unused);
  };
  place(0, count, 0);
}

/** All subsets as rising indices, twins only the first of them first. */
export function subsets(closeUps: readonly CloseUpPart[]): readonly (readonly number[])[] {
  let all: readonly (readonly number[])[] = [[]];
  for (const [index, { powerDpt }] of closeUps.entries()) {
    const twin = closeUps.slice(0, index).findLastIndex((other) => other.powerDpt === powerDpt);
    const extended = all
      .filter((subset) => twin < 0 || subset.includes(twin))
      .map((subset) => [...subset, index]);
    all = [...all, ...extended];
  }
  return all;
}

/** All ordered choices of converters, those that are alike in one order only. */
export function sequences(converters: readonly ConverterPart[]): readonly (readonly number[])[] {
  const isTwin = (a: number, b: number): boolean =>
    converters[a]!.factor === converters[b]!.factor &&
    converters[a]!.lengthMm === converters[b]!.lengthMm;
  const grown = (sequence: readonly number[]): (readonly number[])[] =>
    converters.flatMap((_, next) => {
      if (sequence.includes(next)) return [];
      const isLater = converters.some(
        (_, earlier) => earlier < next && isTwin(earlier, next) && !sequence.includes(earlier),
      );
      return isLater ? [] : [[...sequence, next], ...grown([...sequence, next])];
    });
  return [[], ...grown([])];
}
