/** Figures that are worked out when they are asked for, and then kept. */

/** `make`, called at most once. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

export type Makers<G> = { readonly [K in keyof G]: () => G[K] };

const MAKERS = Symbol('makers');

/** What an object of figures on demand holds beside them. */
export interface Demanded<G> {
  readonly [MAKERS]: () => Makers<G>;
}

/**
 * A prototype whose getters answer with the figures in `keys`, by the makers that the object holds:
 * `{ __proto__: prototype, ...held, ...madeBy(makers) }`. Shared by all objects, so that a shot pays
 * only for what is read of it.
 */
export function demanding<G extends object>(keys: readonly (keyof G & string)[]): G {
  const prototype = {};
  for (const key of keys)
    Object.defineProperty(prototype, key, {
      get(this: Demanded<G>) {
        return this[MAKERS]()[key]();
      },
    });
  return prototype as G;
}

export const madeBy = <G>(makers: () => Makers<G>): Demanded<G> => ({ [MAKERS]: once(makers) });
