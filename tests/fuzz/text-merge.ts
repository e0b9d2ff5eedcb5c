/** Puts the trees of a text's chunks together again, with absolute ranges. */

import { blockMap, moveNode } from '../../shared/syntax/nodes.ts';
import type { MapNode, Node, Pair } from '../../shared/syntax/tree.ts';
import type { Chunk } from '../../shared/text/chunk.ts';
import { parseChunk } from '../../shared/text/parse.ts';
import type { TextProblem } from '../../shared/text/problem.ts';

interface Growing {
  readonly pair: Pair;
  readonly below: Growing[];
}

export interface Merged {
  readonly root: MapNode | null;
  readonly problems: readonly TextProblem[];
}

export function merge(chunks: readonly Chunk[]): Merged {
  const top: Growing[] = [];
  const problems: TextProblem[] = [];
  let offset = 0;
  for (const chunk of chunks) {
    const parsed = parseChunk(chunk);
    problems.push(...parsed.problems);
    const at = offset;
    offset += chunk.text.length;
    if (!parsed.tree) continue;
    const { pairs } = moveNode(parsed.tree, (inChunk) => inChunk + at);
    let into = top;
    for (let depth = 1; depth < chunk.path.length; depth++) into = into.at(-1)?.below ?? [];
    into.push({ pair: pairs[0] as Pair, below: [] });
  }
  return { root: top.length > 0 ? blockMap(top.map(close)) : null, problems };
}

function close({ pair, below }: Growing): Pair {
  if (below.length === 0) return pair;
  const value: Node = blockMap(below.map(close));
  return { ...pair, value, span: { start: pair.span.start, end: value.span.end } };
}
