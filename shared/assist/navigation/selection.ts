/** What a growing selection takes in, from the value under the caret out to its section. */

import type { Position, Range } from '../../api/located.ts';
import type { FileId } from '../../plan/place.ts';
import { pathAt } from '../../text/path.ts';
import type { Node, Pair, Span } from '../../text/tree.ts';
import type { Context } from '../../workspace/context.ts';

/** Innermost first; each holds the one before it. */
export function selectionAt(context: Context, file: FileId, position: Position): readonly Range[] {
  const { store, analysis, locator } = context;
  const text = store.text(file);
  if (!text) return [];
  const { index, offset } = text.locate(position);
  const chunk = store.chunkIds(file)[index];
  if (chunk === undefined) return [];
  const { tree } = analysis.entries.parsed(file, chunk);
  const root = tree?.pairs[0];
  const spot = pathAt(tree, offset);
  if (!root || !spot) return [];
  const spans: Span[] = [root.span];
  let pair: Pair = root;
  let node: Node | null = root.value;
  if (node) spans.push(node.span);
  for (const step of spot.path) {
    if (node?.kind === 'map') {
      const next: Pair | undefined = node.pairs.find(({ key }) => key.text === step);
      if (!next) break;
      pair = next;
      node = next.value;
      spans.push(pair.span);
    } else if (node?.kind === 'seq' && typeof step === 'number') node = node.items[step] ?? null;
    else break;
    if (node) spans.push(node.span);
  }
  if (spot.span) spans.push(spot.span);
  return spans
    .reverse()
    .filter((span, at, all) => at === 0 || !same(span, all[at - 1]!))
    .map((span) => locator.rangeIn(file, { chunk, span }));
}

const same = (a: Span, b: Span): boolean => a.start === b.start && a.end === b.end;
