/** Figures that are calculated when they are first asked for, and then kept. */

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
 * Gives `prototype` a getter for each figure in `keys`, and returns what an object of that
 * prototype has to hold: `{ __proto__: prototype, ...held, ...madeBy(makers) }`. All objects share
 * the getters, and the makers run on the first question. So a shot costs only what is read of it.
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
