/** What the live sheet changes in the plan. All of it comes from a page, so all of it is checked. */

import type { LocatedEdit } from '../api/located.ts';
import type { Tick } from '../api/sheet.ts';
import { flowMap, freeText } from '../bring-back/write.ts';
import { entryAt, idOf } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import { kindOf, type QuantityId } from '../quantity/index.ts';
import type { Context } from '../workspace/context.ts';
import { locatedEdits } from '../workspace/located-edits.ts';

/** Keys that a drawing of the sheet sets, each with the kind of its value. */
const SET_IN_DRAWINGS: Readonly<Record<string, QuantityId>> = {
  aperture: 'f-number',
  tilt: 'angle',
};

/** @param text as a plan has it, from the drawing's choices */
export function setInShot(
  { analysis, store }: Context,
  file: FileId,
  shot: string,
  key: string,
  text: string,
): readonly LocatedEdit[] {
  const entry: EntryId = idOf('shots', shot);
  const kind = Object.hasOwn(SET_IN_DRAWINGS, key) ? SET_IN_DRAWINGS[key] : undefined;
  if (kind === undefined || !kindOf(kind).parse(text).ok) return [];
  if (!analysis.shots(file).includes(entry)) return [];
  return locatedEdits(store, { op: 'set', at: { file, entry, path: [key] }, text });
}

/** Initials or a name; a longer text is none. */
const LONGEST_BY = 40;
/** Signs that a plan can't hold or that change how its text is read. */
const ODD =
  /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069\ufeff\ufffe\uffff]/u;

export function tickCheck(
  context: Context,
  file: FileId,
  { shot, check, done, by }: Tick,
): readonly LocatedEdit[] {
  const at = placeOfCheck(context, file, shot, check);
  if (!at) return [];
  if (done === null) return locatedEdits(context.store, { op: 'set', at, text: 'open' });
  if (!kindOf('date').parse(done).ok) return [];
  if (by.length > LONGEST_BY || ODD.test(by)) return [];
  const pairs: [string, string][] = [['done', done]];
  if (by.trim() !== '') pairs.push(['by', freeText(by.trim())]);
  return locatedEdits(context.store, { op: 'set', at, text: flowMap(pairs) });
}

/** null: the shot, or the day, has no such check. */
function placeOfCheck(
  { analysis }: Context,
  file: FileId,
  shot: string | null,
  check: string,
): Place | null {
  if (shot === null) {
    const once = ifKnown(analysis.reader(file).plan('preflight'))?.once;
    return once && ifKnown(once)?.has(check)
      ? { file, entry: entryAt('preflight'), path: ['once', check] }
      : null;
  }
  const entry: EntryId = idOf('shots', shot);
  if (!analysis.shots(file).includes(entry)) return null;
  if (!analysis.bench(file, entry)?.checks.has(check)) return null;
  return { file, entry, path: ['preflight', check] };
}
