/** Another name for something, everywhere at once. */

import type { Position, Range } from '../../api/located.ts';
import type { Renaming } from '../../api/navigation.ts';
import type { FileId } from '../../plan/place.ts';
import { message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { SHARED_SPACES } from '../../workspace/entry-kinds.ts';
import { find, type NamedThing, thingAt } from './named.ts';
import { located, placesOf } from './references.ts';

const NAME = /^[a-z][a-z0-9-]{0,63}$/;

/** What would be renamed, and its name now; null where nothing there has a name of its own. */
export function renamable(
  context: Context,
  file: FileId,
  position: Position,
): { readonly range: Range; readonly name: string } | null {
  const thing = thingAt(context, file, position);
  if (!thing) return null;
  const here = placesOf(context, thing)
    .map((place) => located(context, place))
    .find((place) => place.file === file && holds(place.range, position));
  return here ? { range: here.range, name: thing.name } : null;
}

export function rename(
  context: Context,
  file: FileId,
  position: Position,
  newName: string,
): Renaming {
  const thing = thingAt(context, file, position);
  if (!thing) return { ok: false, why: message`Nothing here has a name of its own.` };
  if (!NAME.test(newName))
    return {
      ok: false,
      why: message`Names are small letters, digits and hyphens, and begin with a letter.`,
    };
  if (newName === thing.name) return { ok: true, edits: [] };
  const taken = context.store.files().find((one) => isTaken(context, one, thing, newName));
  if (taken !== undefined) return { ok: false, why: message`${newName} is defined already.` };
  const edits = placesOf(context, thing).map((place) => ({
    ...located(context, place),
    text: newName,
  }));
  return { ok: true, edits };
}

function isTaken(context: Context, file: FileId, thing: NamedThing, name: string): boolean {
  const { analysis } = context;
  const { defined, groups } = thing;
  if (groups.includes('recordings')) {
    const body = analysis.entries.lowered(defined.file, defined.entry)?.value as
      | { record?: { state: string; value?: ReadonlyMap<string, unknown> } }
      | undefined;
    return body?.record?.value?.has(name) ?? false;
  }
  const reaches = analysis.names.reaches(file);
  if (file !== defined.file && !reaches.includes(defined.file)) return false;
  // Parts of a rig share one space of names: a tube may not be called as a lens is.
  const spaces = SHARED_SPACES.filter((space) => space.some((group) => groups.includes(group)));
  const together = spaces.length > 0 ? spaces.flat() : groups;
  return find(context, file, defined.entry, together, name) !== null;
}

function holds({ start, end }: Range, { line, character }: Position): boolean {
  const after = line > start.line || (line === start.line && character >= start.character);
  return after && (line < end.line || (line === end.line && character <= end.character));
}
