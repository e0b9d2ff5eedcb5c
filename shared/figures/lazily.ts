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
 * Gives `prototype` getters that answer with the figures in `keys`, and returns what an object of
 * that prototype has to hold for them: `{ __proto__: prototype, ...held, ...madeBy(makers) }`. The
 * getters are shared by all objects and the makers are made on the first question, so that a shot
 * pays only for what is read of it.
 */
export function demanding<G extends object>(
  prototype: object,
  keys: readonly (keyof G & string)[],
): (makers: () => Makers<G>) => object {
  const held = Symbol('makers');
  for (const key of keys)
    Object.defineProperty(prototype, key, {
      get(this: { readonly [held]: () => Makers<G> }) {
        return this[held]()[key]();
      },
    });
  return (makers) => ({ [held]: once(makers) });
}
