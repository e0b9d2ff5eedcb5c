/** Figures that are worked out when they are asked for, and then kept. */

/** `make`, called at most once. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

type Makers<G> = { readonly [K in keyof G]: () => G[K] };

/**
 * Adds to `target` a property for each maker, which answers with what the maker makes.
 * Enumerable, so that whoever lists the figures gets all of them.
 */
export function addLazily<T extends object, G extends object>(target: T, makers: Makers<G>): T & G {
  for (const [key, get] of Object.entries(makers) as [string, () => unknown][])
    Object.defineProperty(target, key, { enumerable: true, configurable: true, get });
  return target as T & G;
}
