/** What stands at a position of a file, in the words of the language. */

import type { Position, Range } from '../api/located.ts';
import { inside } from '../plan/entry-id.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import { pathAt } from '../text/path.ts';
import type { Path } from '../text/tree.ts';
import type { Context } from '../workspace/context.ts';
import { type EntryKind, entryKindOf } from '../workspace/entry-kinds.ts';
import { type Meaning, meaningOf } from './meaning.ts';

export interface PlanSpot {
  /** The entry, and the keys below it, of what the position falls on. */
  readonly place: Place;
  readonly kind: EntryKind;
  readonly on: 'key' | 'value';
  readonly range: Range;
  readonly meaning: Meaning;
}

/** The key or value at `position`; null on blanks, comments, and what is no part of the language. */
export function spotAt(context: Context, file: FileId, position: Position): PlanSpot | null {
  const { store, analysis, locator } = context;
  const text = store.text(file);
  if (!text) return null;
  const { index, offset } = text.locate(position);
  const chunk = store.chunkIds(file)[index];
  if (chunk === undefined) return null;
  const spot = pathAt(analysis.entries.parsed(file, chunk).tree, offset);
  if (!spot || spot.on === 'inside' || !spot.span) return null;
  const { place, kind } = ownerOf(file, chunk, spot.path);
  const meaning = meaningOf(kind, place);
  if (!meaning) return null;
  const range = locator.rangeIn(file, { chunk, span: spot.span });
  return { place, kind, on: spot.on, range, meaning };
}

/** The entry that a path below a chunk's own key leads into: itself, or one inside a whole section. */
function ownerOf(
  file: FileId,
  chunk: EntryId,
  path: Path,
): { readonly place: Place; readonly kind: EntryKind } {
  let entry = chunk;
  let kind = entryKindOf(entry);
  let depth = 0;
  while (kind.kind === 'container' && typeof path[depth] === 'string') {
    entry = inside(entry, String(path[depth]));
    kind = entryKindOf(entry);
    depth++;
  }
  return { place: { file, entry, path: path.slice(depth) }, kind };
}
