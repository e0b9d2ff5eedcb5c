/** The edit of a plan, gathered from its entries: its cuts, and what they read of shots. */

import type { Footage } from '../figures/edit-footage.ts';
import type { EditPlan, PlannedCut, ShotInEdit } from '../figures/edit-plan.ts';
import { lastOf } from '../figures/remembered.ts';
import { entryAt, idOf, isOf, nameOf, plainId } from '../plan/entry-id.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Clip, Cut, Deliver, EditMusic } from '../plan/generated/types.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Bytes } from '../quantity/brands.ts';
import type { Entries, Lowered } from './entries.ts';

/**
 * Parts that stayed as they were are the same objects as the last time: what follows from them is
 * kept by that (lastOf in figures/remembered.ts).
 *
 * @param field an entry as a field; the same object for as long as it says the same
 * @param footage what the edit asks of a shot; null where it can't be read
 */
export function readEdit(
  file: FileId,
  entries: Entries,
  field: (entry: EntryId) => Field<unknown>,
  footage: (shot: string) => ShotInEdit['footage'],
): EditPlan {
  const cuts = entries.list(file).flatMap(({ id }): PlannedCut[] => {
    if (!isOf('cuts', id) || id !== plainId(id)) return [];
    const lowered = entries.lowered(file, id);
    return [lowered ? plannedCut(lowered, file, id) : unread(file, id)];
  });
  const names = new Set(cuts.flatMap(({ fields }) => (fields && ifKnown(fields.shot)) ?? []));
  return {
    file,
    deliver: field(entryAt('deliver')) as Field<Deliver>,
    music: field(entryAt('edit', 'music')) as Field<EditMusic>,
    memory: field(entryAt('edit', 'memory')) as Field<Bytes>,
    cuts,
    shots: new Map(
      [...names].map((shot) => {
        const clips = clipsOf(field(idOf('clips', shot)) as Field<readonly Field<Clip>[]>);
        const its = footage(shot);
        return [shot, its ? inEdit(its, clips) : { footage: null, clips }];
      }),
    ),
  };
}

const unread = (file: FileId, id: EntryId): PlannedCut => ({
  name: nameOf('cuts', id),
  at: { file, entry: id, path: [] },
  fields: null,
});

const plannedCut = lastOf(
  (lowered: Lowered, file: FileId, id: EntryId): PlannedCut => ({
    ...unread(file, id),
    fields: lowered.def === 'cut' ? (lowered.value as Cut) : null,
  }),
);

const inEdit = lastOf(
  (footage: Footage, clips: ShotInEdit['clips']): ShotInEdit => ({ footage, clips }),
);

const clipsOf = lastOf(
  (field: Field<readonly Field<Clip>[]>): readonly Clip[] | null =>
    ifKnown(field)?.flatMap((clip) => ifKnown(clip) ?? []) ?? null,
);
