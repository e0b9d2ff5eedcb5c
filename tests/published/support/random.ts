/** A stream of random numbers that is the same on every run: mulberry32 (T. Ettinger, public domain). */
export interface Random {
  between(low: number, high: number): number;
  /** Even in the logarithm, for quantities that span decades. */
  spread(low: number, high: number): number;
  whole(low: number, high: number): number;
  pick<T>(items: readonly T[]): T;
}

export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  return {
    between,
    spread: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    whole,
    pick: (items) => items[whole(0, items.length - 1)] as (typeof items)[number],
  };
}
