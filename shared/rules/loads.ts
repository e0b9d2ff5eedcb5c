/**
 * Loads on rigs that several shots share. The same rig may weigh more in one of them, if it was
 * measured there.
 */
import type { Carried } from '../figures/carried.ts';
import { type Place, samePlace } from '../plan/place.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';
import { placeKey } from './shot-rule.ts';

/** Each rig once for each different load on its support in the shots, in their order. */
export function loadsOf(carried: readonly (Carried | null)[]): readonly Carried[] {
  const seen = new Set<string>();
  let last: Carried | undefined;
  return carried.filter((one): one is Carried => {
    // Most shots have the load of the shot before, so no key is made for those.
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

/** A part of the support, with what it carries and is rated for. */
export interface Load {
  readonly name: string;
  readonly massKg: number;
  readonly payloadKg: number;
  /** The light that it carries in place of a rig. */
  readonly light?: string;
}

/**
 * Above this fraction of its payload a head creeps and shakes, and a stand bends and vibrates.
 * Common practice.
 */
const UNEASY = 0.7;

export const judgedLoad = (at: Place, facts: Load): readonly Observation<Load>[] =>
  facts.massKg <= facts.payloadKg * UNEASY
    ? []
    : [{ at, severity: facts.massKg > facts.payloadKg ? 'error' : 'note', facts }];

/** A rule about a payload: it takes a part of the support and the load on it; null: unknown. */
export const payloadRule = (
  part: 'head' | 'stand',
  loadOf: (one: Carried & { readonly massKg: number }) => number,
): Pick<PlanRule<Load>, 'severity' | 'check' | 'size' | 'numbers'> => ({
  severity: 'error',
  check: ({ carried }) =>
    worstOf(carried, ({ massKg }) => massKg).flatMap((one) => {
      const { massKg: rigKg, [part]: under } = one;
      if (!under || under.payloadKg === null || rigKg === null) return [];
      const massKg = loadOf({ ...one, massKg: rigKg });
      const { at, name, payloadKg } = under;
      return judgedLoad(at, { name, massKg, payloadKg });
    }),
  size: ({ massKg, payloadKg }) => ({ kind: 'mass', value: massKg - payloadKg }),
  numbers: ({ massKg, payloadKg }) => ({ massKg, payloadKg }),
});
