/** Where a caret stands, in the words of the language. */
import { entryAt, keysOf } from '../../plan/entry-id.ts';
import type { FileId, Place } from '../../plan/place.ts';
import type { Shape } from '../../plan/shape.ts';
import type { Path } from '../../text/tree.ts';
import type { Context } from '../../workspace/context.ts';
import { entryKindOf } from '../../workspace/entry-kinds.ts';
import { type Meaning, meaningOf } from '../meaning.ts';
import { TrialShot } from './trial-shot.ts';

/** A place that something is to be written at, whether or not anything stands there yet. */
export interface Where {
  readonly context: Context;
  readonly file: FileId;
  readonly place: Place;
  /** null: the plan as a whole. */
  readonly meaning: Meaning | null;
  /** The shot that the place is in, with what would become of it. */
  readonly shot: TrialShot | null;
}

export function whereIs(context: Context, file: FileId, path: Path): Where | null {
  const place = placeAt(file, path);
  const kind = entryKindOf(place.entry);
  const meaning = path.length === 0 ? null : meaningOf(kind, place);
  if (path.length > 0 && !meaning) return null;
  const isShot = context.analysis.isShot(place.entry);
  const shot = isShot ? TrialShot.ofShot(context, file, place.entry) : null;
  return { context, file, place, meaning, shot };
}

/** A place below one that is known. */
export const below = (where: Where, step: string | number): Where | null => {
  const { place } = where;
  const path = [...keysOf(place.entry), ...place.path, step];
  const at = whereIs(where.context, where.file, path);
  return at && { ...at, shot: where.shot ?? at.shot };
};

export const shapeOf = ({ meaning }: Where): Shape =>
  meaning?.shape ?? { kind: 'record', of: 'plan' };

/** The shortest part of a path that is an entry, and what is left of it. */
function placeAt(file: FileId, path: Path): Place {
  for (let length = 1; length <= path.length; length++) {
    const entry = entryAt(...path.slice(0, length).map(String));
    if (entryKindOf(entry).kind !== 'container') return { file, entry, path: path.slice(length) };
  }
  return { file, entry: entryAt(...path.map(String)), path: [] };
}
