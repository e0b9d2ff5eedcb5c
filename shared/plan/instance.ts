/** A node as the JSON instance that the schema judges: scalars as the text that was written. */
import type { MapNode, Node, Pair } from '../syntax/tree.ts';
import { SHAPES } from './generated/shapes.ts';
import type { Shape } from './shape.ts';

/** Pairs with keys of their own; of equal keys the first, as the text's own finding says. */
export function distinctPairs(node: MapNode): readonly Pair[] {
  if (!hasEqualKeys(node.pairs)) return node.pairs;
  const seen = new Set<string>();
  return node.pairs.filter(({ key }) => !seen.has(key.text) && seen.add(key.text));
}

/** Up to so many keys comparing all is less work than gathering them. */
const FEW = 24;

function hasEqualKeys(pairs: readonly Pair[]): boolean {
  if (pairs.length > FEW) return new Set(pairs.map(({ key }) => key.text)).size < pairs.length;
  for (let i = 1; i < pairs.length; i++)
    for (let j = 0; j < i; j++) if (pairs[i]!.key.text === pairs[j]!.key.text) return true;
  return false;
}

/**
 * A record with no members but the plan's keys, whatever they are called. Of a class, because an
 * object that has no prototype at all is kept as a slow table.
 */
class Instance {
  [key: string]: unknown;
}
Object.setPrototypeOf(Instance.prototype, null);
Reflect.deleteProperty(Instance.prototype, 'constructor');

export function toInstance(node: Node | null, shape: Shape | undefined): unknown {
  // Below a key that no record has there is nothing to judge.
  if (node === null || shape === undefined) return null;
  switch (node.kind) {
    case 'scalar':
      return shape.kind === 'yes-no' && /^(?:true|false)$/.test(node.text)
        ? node.text === 'true'
        : node.text;
    case 'seq':
      return node.items.map((item) => toInstance(item, shape.kind === 'list' ? shape.item : shape));
    case 'map': {
      const instance = new Instance();
      for (const { key, value } of distinctPairs(node)) {
        instance[key.text] = toInstance(value, below(shape, key.text));
      }
      return instance;
    }
  }
}

function below(shape: Shape, key: string): Shape | undefined {
  if (shape.kind === 'map') return shape.item;
  if (shape.kind !== 'record' && shape.kind !== 'word-or-record') return undefined;
  const { keys } = SHAPES[shape.of];
  return Object.hasOwn(keys, key) ? keys[key]?.shape : undefined;
}
