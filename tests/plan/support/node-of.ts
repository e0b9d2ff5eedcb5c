import type { MapNode, Node, ScalarNode } from '../../../shared/syntax/tree.ts';

const span = { start: 0, end: 0 };

const scalar = (text: string): ScalarNode => ({ kind: 'scalar', span, text, style: 'plain' });

/** A plain value as the tree that its YAML would give; every scalar as text. */
export function nodeOf(value: unknown): Node | null {
  if (value === null || value === undefined) return null;
  if (Array.isArray(value)) return { kind: 'seq', span, flow: true, items: value.map(nodeOf) };
  if (typeof value === 'object') return mapOf(Object.entries(value));
  return scalar(String(value));
}

/** From pairs, so that a key may stand twice. */
export function mapOf(pairs: readonly (readonly [string, unknown])[]): MapNode {
  return {
    kind: 'map',
    span,
    flow: false,
    pairs: pairs.map(([key, value]) => ({ key: scalar(key), value: nodeOf(value), span })),
  };
}
