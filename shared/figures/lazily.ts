/** Figures that are calculated when they are first asked for, and then kept. */

/** `make`, called at most once. */
export function once<T>(make: () => T): () => T {
  let isMade = false;
  let made: T;
  return () => {
    if (!isMade) {
      made = make();
      isMade = true;
    }
    return made;
  };
}

export type Makers<G> = { readonly [K in keyof G]: () => G[K] };

/** Every key of a group of figures; one forgotten or too many doesn't compile. */
type Keys<G> = { readonly [K in keyof G]-?: true };

/** What an object of figures holds: what they are made from, group by group. */
export const HELD = Symbol('held');

/**
 * Gives `prototype` getters that answer with the figures in `keys`, for objects that hold what these
 * are made from: `{ __proto__: prototype, [HELD]: held }`. The getters are shared by all objects and
 * `of` makes a group on the first question, so that a shot pays only for what is read of it.
 *
 * @returns nothing but the type of what such objects have
 */
export function demanding<H, G extends object>(
  prototype: object,
  keys: Keys<G>,
  of: (held: H) => Makers<G>,
): G {
  for (const key of Object.keys(keys) as (keyof G)[])
    Object.defineProperty(prototype, key, {
      get(this: { readonly [HELD]: H }) {
        return of(this[HELD])[key]();
      },
    });
  return {} as G;
}

/** As `demanding`, of figures that are calculated together: the first question calculates all. */
export function demandingAll<H, G extends object>(
  prototype: object,
  keys: Keys<G>,
  of: (held: H) => G,
): G {
  for (const key of Object.keys(keys) as (keyof G)[])
    Object.defineProperty(prototype, key, {
      get(this: { readonly [HELD]: H }) {
        return of(this[HELD])[key];
      },
    });
  return {} as G;
}
