/** The choices and orders of a kit's pieces, each once: pieces that are alike are not told apart. */
import type { CloseUpPart, ConverterPart, TubePart } from './parts.ts';

/** How many tubes are still to be placed, and how much length they can add at least and at most, mm. */
export interface StillToPlace {
  readonly count: number;
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * Every way to put `count` tubes into the gaps that the converters leave, each once: behind, between
 * and ahead of them, in the gap `firstGap` (0 is nearest to the sensor) and those ahead of it. Of tubes
 * that are equally long the earlier goes no farther than the later. `goOn` is asked before anything is
 * added to a beginning: false leaves out all that begins so. Tubes without length change nothing and
 * are left out.
 */
export function placeTubes(
  tubes: readonly TubePart[],
  { gapCount, firstGap, count }: { gapCount: number; firstGap: number; count: number },
  goOn: (lengths: readonly number[], still: StillToPlace) => boolean,
  visit: (gaps: readonly (readonly number[])[], lengths: readonly number[]) => void,
): void {
  const order = tubes.flatMap(({ lengthMm }, index) => (lengthMm > 0 ? [index] : []));
  order.sort((a, b) => tubes[b]!.lengthMm - tubes[a]!.lengthMm);
  /** sums[i]: length of the first i, longest first. */
  const sums = [0];
  for (const index of order) sums.push(sums.at(-1)! + tubes[index]!.lengthMm);
  const gaps: number[][] = Array.from({ length: gapCount }, () => []);
  const lengths = gaps.map(() => 0);
  const place = (from: number, left: number, twinGap: number): void => {
    const still = {
      count: left,
      leastMm: sums[order.length]! - sums[order.length - left]!,
      mostMm: sums[from + left]! - sums[from]!,
    };
    if (!goOn(lengths, still)) return;
    if (left === 0) {
      visit(gaps, lengths);
      return;
    }
    for (let at = from; at <= order.length - left; at++) {
      const index = order[at]!;
      const { lengthMm } = tubes[index]!;
      const isTwin = at > 0 && tubes[order[at - 1]!]!.lengthMm === lengthMm;
      // A twin that was passed over leaves its like nowhere to go.
      if (isTwin && at > from) continue;
      for (let gap = isTwin ? twinGap : firstGap; gap < gapCount; gap++) {
        const there = lengths[gap]!;
        gaps[gap]!.push(index);
        lengths[gap] = there + lengthMm;
        place(at + 1, left - 1, gap);
        lengths[gap] = there;
        gaps[gap]!.pop();
      }
    }
  };
  if (count <= order.length) place(0, count, firstGap);
}

/** All subsets of at most `most` as rising indices, twins only the first of them first. */
export function* subsets(
  closeUps: readonly CloseUpPart[],
  most: number,
  from = 0,
  chosen: readonly number[] = [],
): Generator<readonly number[]> {
  yield chosen;
  if (chosen.length === most) return;
  for (let index = from; index < closeUps.length; index++) {
    const { powerDpt } = closeUps[index]!;
    const twin = closeUps.slice(0, index).findLastIndex((other) => other.powerDpt === powerDpt);
    if (twin < 0 || chosen.includes(twin))
      yield* subsets(closeUps, most, index + 1, [...chosen, index]);
  }
}

/** All ordered choices of at most `most` converters, those that are alike in one order only. */
export function* sequences(
  converters: readonly ConverterPart[],
  most: number,
  sequence: readonly number[] = [],
): Generator<readonly number[]> {
  yield sequence;
  if (sequence.length === most) return;
  const isTwin = (a: number, b: number): boolean =>
    converters[a]!.factor === converters[b]!.factor &&
    converters[a]!.lengthMm === converters[b]!.lengthMm;
  for (const next of converters.keys()) {
    if (sequence.includes(next)) continue;
    const isLater = converters.some(
      (_, earlier) => earlier < next && isTwin(earlier, next) && !sequence.includes(earlier),
    );
    if (!isLater) yield* sequences(converters, most, [...sequence, next]);
  }
}
