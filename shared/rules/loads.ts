/** Loads on what shots share: one rig may weigh more in one of them, where it was measured so. */
import type { Carried } from '../figures/carried.ts';
import { samePlace } from '../plan/place.ts';
import { placeKey } from './shot-rule.ts';

/** Each rig once for each way in which its shots load what carries it, in their order. */
export function loadsOf(carried: readonly (Carried | null)[]): readonly Carried[] {
  const seen = new Set<string>();
  let last: Carried | undefined;
  return carried.filter((one): one is Carried => {
    // Most shots carry what the one before carries: no key is made for those.
    if (one === null || (last && sameLoad(one, last))) return false;
    last = one;
    const key = [placeKey(one.at), ...numbersOf(one)].join(' ');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/**
 * Of the loads on each support the worst, so that one finding says it.
 * @param howBad the more, the worse; null: not known of this one
 */
export function worstOf(
  loads: readonly Carried[],
  howBad: (one: Carried) => number | null,
): readonly Carried[] {
  const worst = new Map<string, { readonly one: Carried; readonly bad: number }>();
  for (const one of loads) {
    const bad = howBad(one);
    const key = placeKey(one.at);
    if (bad !== null && !(bad <= (worst.get(key)?.bad ?? Number.NEGATIVE_INFINITY)))
      worst.set(key, { one, bad });
  }
  return [...worst.values()].map(({ one }) => one);
}

const numbersOf = ({ massKg, centreOfGravityMm, stabilityFactor }: Carried) => [
  massKg,
  centreOfGravityMm,
  stabilityFactor,
];

function sameLoad(a: Carried, b: Carried): boolean {
  const [now, before] = [numbersOf(a), numbersOf(b)];
  return samePlace(a.at, b.at) && now.every((number, index) => number === before[index]);
}
