/** How the figures read a plan: names through the files that it uses, fields from the plan itself. */

import type { Query } from '../engine/graph.ts';
import { CONSTANTS } from '../figures/constants.ts';
import { fittedEntry } from '../figures/fitted-entry.ts';
import type { Named, PlanFields } from '../figures/named.ts';
import type { PlanReader } from '../figures/reader.ts';
import { layOutRig, type RigLayout } from '../figures/rig-layout.ts';
import { entryAt, idOf, isOf, nameOf, plainId } from '../plan/entry-id.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Clip, Cut, Rig, Shot } from '../plan/generated/types.ts';
import type { FileId, Place } from '../plan/place.ts';
import type { Ref } from '../plan/ref.ts';
import type { Entries, EntryRef } from './entries.ts';
import { type Key, keyOf } from './keys.ts';
import type { Names } from './names.ts';

export function planReader(
  file: FileId,
  entries: Entries,
  names: Names,
  rigLayout: Query<RigLayout, Key<string>>,
): PlanReader {
  const reader: PlanReader = {
    file,
    constants: CONSTANTS,
    rig: ({ name }) => rigLayout(keyOf(file, name)),
    find: (group, name) => {
      const entry = names.find(file, group, name);
      return entry && fittedEntry(entry, CONSTANTS);
    },
    hasClips: (shot) => entries.source(file, idOf('clips', shot)) !== undefined,
    clipsOf: (shot) => clipsOf(file, shot, entries),
    cutsOf: (shot) => cutsOf(file, shot, entries),
    plan: (key) => planField(file, entries, key),
    offer: {
      names: (group) => names.namesIn(file, group),
      layOut: (parts) => layOutRig(reader, looseRig(file, parts)),
      shotsWith: (rig) => shotsWith(file, rig, entries),
    },
  };
  return reader;
}

function planField<K extends keyof PlanFields>(
  file: FileId,
  entries: Entries,
  key: K,
): PlanFields[K] {
  const lowered = entries.lowered(file, entryAt(key));
  if (lowered?.value !== undefined) return lowered.value as PlanFields[K];
  const missing: Field<never> = {
    state: lowered ? 'invalid' : 'missing',
    at: { file, entry: entryAt(key), path: [] },
  };
  return missing as PlanFields[K];
}

function clipsOf(file: FileId, shot: string, entries: Entries): readonly Clip[] {
  const field = entries.lowered(file, idOf('clips', shot))?.value as
    | Field<readonly Field<Clip>[]>
    | undefined;
  return ((field && ifKnown(field)) ?? []).flatMap((clip) => ifKnown(clip) ?? []);
}

function cutsOf(file: FileId, shot: string, entries: Entries): ReturnType<PlanReader['cutsOf']> {
  return entries.list(file).flatMap(({ id }) => {
    if (!isOf('cuts', id) || id !== plainId(id)) return [];
    const cut = entries.lowered(file, id)?.value as Cut | undefined;
    return cut && ifKnown(cut.shot) === shot
      ? [{ cut: nameOf('cuts', id), reframe: ifKnown(cut.reframe) ?? null }]
      : [];
  });
}

/** Parts as if a rig of the plan listed them. */
function looseRig(file: FileId, parts: readonly string[]): Named<Rig> {
  const entry = idOf('rigs', '');
  const place = (path: Place['path']): Place => ({ file, entry, path });
  const missing = (key: string): Field<never> => ({ state: 'missing', at: place([key]) });
  return {
    name: parts.join(', '),
    group: 'rigs',
    file,
    entry,
    fields: {
      about: missing('about'),
      parts: {
        state: 'known',
        value: parts.map((part, index) => ({
          state: 'known',
          value: part as Ref,
          at: place(['parts', index]),
        })),
        at: place(['parts']),
      },
      support: missing('support'),
      filters: missing('filters'),
      measured: missing('measured'),
    },
  };
}

function shotsWith(file: FileId, rig: string, entries: Entries): number {
  const uses = ({ kind, id }: EntryRef): boolean => {
    if (kind.kind !== 'entry' || kind.home.def !== 'shot') return false;
    const field = (entries.lowered(file, id)?.value as Shot | undefined)?.rig;
    return field !== undefined && ifKnown(field) === rig;
  };
  return entries.list(file).filter(uses).length;
}
