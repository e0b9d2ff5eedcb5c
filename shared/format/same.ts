/** Whether two texts say the same, wherever it stands. */
import type { Chunk } from '../text/chunk.ts';
import { parseChunk } from '../text/parse.ts';
import type { TextProblem } from '../text/problem.ts';
import type { Node } from '../text/tree.ts';

/** The same entries with the same values, and the same problems with the same words. */
export function readsTheSame(one: readonly Chunk[], other: readonly Chunk[]): boolean {
  const [before, after] = [one.filter(says), other.filter(says)];
  return (
    before.length === after.length &&
    before.every((chunk, index) => isSameChunk(chunk, after[index] as Chunk))
  );
}

const says = (chunk: Chunk): boolean =>
  chunk.kind !== 'loose' || parseChunk(chunk).problems.length > 0;

function isSameChunk(one: Chunk, other: Chunk): boolean {
  if (one.kind !== other.kind || one.path.join('\n') !== other.path.join('\n')) return false;
  const [before, after] = [parseChunk(one), parseChunk(other)];
  return (
    isSameNode(before.tree, after.tree) &&
    before.problems.map(words).join('\n') === after.problems.map(words).join('\n')
  );
}

const words = ({ rule, code, args }: TextProblem): string => JSON.stringify([rule, code, args]);

function isSameNode(one: Node | null, other: Node | null): boolean {
  if (one === null || other === null) return one === other;
  if (one.kind === 'scalar')
    return other.kind === 'scalar' && one.text === other.text && one.style === other.style;
  if (one.kind === 'seq')
    return (
      other.kind === 'seq' &&
      one.flow === other.flow &&
      one.items.length === other.items.length &&
      one.items.every((item, index) => isSameNode(item, other.items[index] as Node | null))
    );
  return (
    other.kind === 'map' &&
    one.flow === other.flow &&
    one.pairs.length === other.pairs.length &&
    one.pairs.every(({ key, value }, index) => {
      const pair = other.pairs[index];
      return pair !== undefined && isSameNode(key, pair.key) && isSameNode(value, pair.value);
    })
  );
}
