/** What reading a text chunk by chunk finds, and what it reads. */

import type { Node } from '../../../shared/syntax/tree.ts';
import type { Chunk } from '../../../shared/text/chunk.ts';
import { parseChunk } from '../../../shared/text/parse.ts';
import type { TextProblem } from '../../../shared/text/problem.ts';
import { split } from '../../../shared/text/split.ts';

/** A problem, with its chunk and where that starts. */
export interface Found {
  readonly chunk: Chunk;
  readonly at: number;
  readonly problem: TextProblem;
}

export function problemsOf(text: string): Found[] {
  let at = 0;
  return split(text).flatMap((chunk) => {
    const from = at;
    at += chunk.text.length;
    return parseChunk(chunk).problems.map((problem) => ({ chunk, at: from, problem }));
  });
}

/** Scalars by path, in the order of the text. */
export function fields(text: string): string[] {
  const found: string[] = [];
  const walk = (node: Node | null, path: string): void => {
    if (node === null) found.push(path);
    else if (node.kind === 'scalar') found.push(`${path}=${node.text}`);
    else if (node.kind === 'seq') {
      for (const [index, item] of node.items.entries()) walk(item, `${path}/${index}`);
    } else for (const pair of node.pairs) walk(pair.value, `${path}/${pair.key.text}`);
  };
  for (const chunk of split(text)) {
    const { tree } = parseChunk(chunk);
    if (chunk.kind === 'entry' && tree)
      walk(
        tree,
        chunk.path
          .slice(0, -1)
          .map((key) => `/${key}`)
          .join(''),
      );
  }
  return found;
}
