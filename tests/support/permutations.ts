/** Every order of some things, the given one first. */
export function* orders<T>(items: readonly T[]): Generator<readonly T[]> {
  if (items.length < 2) yield items;
  for (const [index, item] of items.entries())
    for (const rest of orders([...items.slice(0, index), ...items.slice(index + 1)]))
      yield [item, ...rest];
}
