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

/**
 * A maker of objects that hold some figures and work the others out on demand. The getters are
 * shared by all objects, so that a shot pays only for what is read of it.
 *
 * @param keys the figures on demand
 */
export function withDemanded<G extends object>(
  keys: readonly (keyof G & string)[],
): <T extends object>(held: T, makers: () => Makers<G>) => T & G {
  class Figures {
    readonly #makers: () => Makers<G>;

    constructor(held: object, makers: () => Makers<G>) {
      Object.assign(this, held);
      this.#makers = once(makers);
    }

    demand<K extends keyof G>(key: K): G[K] {
      return this.#makers()[key]();
    }
  }
  for (const key of keys)
    Object.defineProperty(Figures.prototype, key, {
      get(this: Figures) {
        return this.demand(key);
      },
    });
  return <T extends object>(held: T, makers: () => Makers<G>) =>
    new Figures(held, makers) as unknown as T & G;
}
