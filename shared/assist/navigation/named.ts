/** The name under a position: what it names, and where that is defined. */

import type { Position } from '../../api/located.ts';
import { above, isOf } from '../../plan/entry-id.ts';
import type { Group, GroupName } from '../../plan/generated/names.ts';
import type { EntryId, FileId, Place } from '../../plan/place.ts';
import type { Context } from '../../workspace/context.ts';
import { HOMES } from '../../workspace/entry-kinds.ts';
import { type PlanSpot, spotAt } from '../spot.ts';

/** Something with a name: an entry, or a recording setting inside a body. */
export interface NamedThing {
  readonly name: string;
  /** Where it is defined: the place of its own key. */
  readonly defined: Place;
  /** The groups that a reference to it names. */
  readonly groups: readonly Group[];
}

export function thingAt(context: Context, file: FileId, position: Position): NamedThing | null {
  const spot = spotAt(context, file, position);
  return spot && (definedAt(spot) ?? referredAt(context, file, spot));
}

/** The thing whose own key the position is on. */
function definedAt({ place, kind, on, meaning }: PlanSpot): NamedThing | null {
  if (on !== 'key') return null;
  if (kind.kind === 'entry' && place.path.length === 0 && kind.home.group !== 'cuts') {
    const groups = [kind.home.group as Group];
    return { name: kind.name, defined: { ...place, part: 'key' }, groups };
  }
  const isSetting =
    isOf('bodies', place.entry) && place.path.length === 2 && place.path[0] === 'recording-modes';
  return isSetting && meaning.name !== undefined
    ? { name: meaning.name, defined: { ...place, part: 'key' }, groups: ['recordings'] }
    : null;
}

/** The thing that a reference at the position leads to. */
function referredAt(context: Context, file: FileId, spot: PlanSpot): NamedThing | null {
  const { place, on, meaning } = spot;
  const { shape } = meaning;
  if (on === 'value' && shape.kind === 'ref') {
    const name = valueAt(context, file, place);
    return name === null ? null : find(context, file, place.entry, shape.groups, name);
  }
  if (on === 'key' && meaning.refersTo && meaning.name !== undefined)
    return find(context, file, place.entry, meaning.refersTo, meaning.name);
  // The clips of a shot stand under its name.
  return on === 'key' && spot.kind.kind === 'clips' && place.path.length === 0
    ? find(context, file, place.entry, ['shots'], spot.kind.name)
    : null;
}

function valueAt({ store, locator }: Context, file: FileId, place: Place): string | null {
  const found = locator.spanOf(place);
  const index = found && locator.indexOf(file, found.chunk);
  const chunk = index === undefined ? undefined : store.text(file)?.chunks[index];
  if (!found || !chunk) return null;
  return chunk.text.slice(found.span.start, found.span.end).replace(/^["']|["']$/g, '');
}

/** The thing of that name which `file` would find; a setting is looked up in the shot's own body. */
export function find(
  { analysis }: Context,
  file: FileId,
  entry: EntryId,
  groups: readonly Group[],
  name: string,
): NamedThing | null {
  for (const group of groups) {
    if (group === 'recordings') {
      const setting = analysis.bench(file, entry)?.recording;
      if (setting?.name !== name) continue;
      const path = ['recording-modes', name];
      const defined: Place = { file: setting.file, entry: setting.entry, path, part: 'key' };
      return { name, defined, groups: ['recordings'] };
    }
    const found = analysis.names.define(file, group as GroupName, name);
    if (found) {
      const own = HOMES[above(found.entry) ?? '']?.group as Group | undefined;
      return { name, defined: { ...found, path: [], part: 'key' }, groups: own ? [own] : groups };
    }
  }
  return null;
}
