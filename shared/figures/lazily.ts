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

/**
 * Gives `prototype` getters that answer with the figures in `keys`, and returns what an object of
 * that prototype has to hold for them: `{ __proto__: prototype, ...held, ...madeBy(makers) }`. The
 * getters are shared by all objects and the makers are made on the first question, so that a shot
 * pays only for what is read of it. To the compiler the object has the figures themselves.
 */
export function demanding<G extends object>(
  prototype: object,
  keys: Keys<G>,
): (makers: () => Makers<G>) => G {
  const held = Symbol('makers');
  for (const key of Object.keys(keys) as (keyof G)[])
    Object.defineProperty(prototype, key, {
      get(this: { readonly [held]: () => Makers<G> }) {
        return this[held]()[key]();
      },
    });
  return (makers) => ({ [held]: once(makers) }) as unknown as G;
}

/** As `demanding`, of figures that are calculated together: the first question calculates all. */
export function demandingAll<G extends object>(
  prototype: object,
  keys: Keys<G>,
): (make: () => G) => G {
  const held = Symbol('group');
  for (const key of Object.keys(keys) as (keyof G)[])
    Object.defineProperty(prototype, key, {
      get(this: { readonly [held]: () => G }) {
        return this[held]()[key];
      },
    });
  return (make) => ({ [held]: once(make) }) as unknown as G;
}
