/** Where a name stands: its definition, and everything that refers to it, in every given file. */

import type { LocatedPlace, Position } from '../../api/located.ts';
import { type EntryId, type FileId, type Place, samePlace } from '../../plan/place.ts';
import { type Reference, referencesIn } from '../../plan/references.ts';
import type { Context } from '../../workspace/context.ts';
import { find, type NamedThing, thingAt } from './named.ts';

export function definitionOf(
  context: Context,
  file: FileId,
  position: Position,
): LocatedPlace | null {
  const thing = thingAt(context, file, position);
  return thing && located(context, thing.defined);
}

/** In the order of the files and their texts, the definition first. */
export function referencesOf(
  context: Context,
  file: FileId,
  position: Position,
): readonly LocatedPlace[] {
  const thing = thingAt(context, file, position);
  return thing ? placesOf(context, thing).map((place) => located(context, place)) : [];
}

/** Every place that would have to change if the thing had another name. */
export function placesOf(context: Context, thing: NamedThing): readonly Place[] {
  const { store } = context;
  const references = store.files().flatMap((file) => referring(context, file, thing));
  return [thing.defined, ...references];
}

function referring(context: Context, file: FileId, thing: NamedThing): Place[] {
  const { analysis } = context;
  if (!analysis.names.reaches(file).includes(thing.defined.file)) return [];
  return analysis.entries.list(file).flatMap(({ id, kind }): Place[] => {
    if (kind.kind === 'clips') {
      const shot = kind.name === thing.name && find(context, file, id, ['shots'], kind.name);
      const at: Place = { file, entry: id, path: [], part: 'key' };
      return shot && samePlace(shot.defined, thing.defined) ? [at] : [];
    }
    const lowered = analysis.entries.lowered(file, id);
    if (kind.kind !== 'entry' || !lowered || lowered.def === null) return [];
    return referencesIn(lowered.def, lowered.value)
      .filter((reference) => refersTo(context, file, id, reference, thing))
      .map(({ at }) => at);
  });
}

function refersTo(
  context: Context,
  file: FileId,
  entry: EntryId,
  { name, groups }: Reference,
  thing: NamedThing,
): boolean {
  if (name !== thing.name || !groups.some((group) => thing.groups.includes(group))) return false;
  const found = find(context, file, entry, groups, name);
  return found !== null && samePlace(found.defined, thing.defined);
}

export const located = ({ locator }: Context, place: Place): LocatedPlace => ({
  file: place.file,
  range: locator.rangeOf(place),
});
