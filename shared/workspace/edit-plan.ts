/** The edit of a plan, drawn together from its entries: its cuts, and what they read of shots. */
import type { EditPlan, PlannedCut, ShotInEdit } from '../figures/edit-plan.ts';
import type { Field } from '../plan/field.ts';
import { ifKnown } from '../plan/field.ts';
import type { Clip, Cut } from '../plan/generated/types.ts';
import type { FileId } from '../plan/place.ts';
import type { Entries } from './entries.ts';
import { plainId } from './entry-kinds.ts';

const CUTS = 'edit/cuts/';

/** @param footage what the edit asks of a shot; null where it can't be read */
export function readEdit(
  file: FileId,
  entries: Entries,
  footage: (shot: string) => ShotInEdit['footage'],
): EditPlan {
  const field = <T>(entry: string): Field<T> => {
    const lowered = entries.lowered(file, entry);
    const at = { file, entry, path: [] };
    if (lowered?.value !== undefined) return lowered.value as Field<T>;
    return { state: lowered ? 'invalid' : 'missing', at };
  };
  const cuts = entries.list(file).flatMap(({ id }): PlannedCut[] => {
    if (!id.startsWith(CUTS) || id !== plainId(id)) return [];
    const lowered = entries.lowered(file, id);
    return [
      {
        name: id.slice(CUTS.length),
        at: { file, entry: id, path: [] },
        fields: lowered?.def === 'cut' ? (lowered.value as Cut) : null,
      },
    ];
  });
  const names = new Set(cuts.flatMap(({ fields }) => (fields && ifKnown(fields.shot)) ?? []));
  return {
    file,
    deliver: field('deliver'),
    music: field('edit/music'),
    memory: field('edit/memory'),
    cuts,
    shots: new Map(
      [...names].map((shot) => [
        shot,
        { footage: footage(shot), clips: clipsOf(field(`clips/${shot}`)) },
      ]),
    ),
  };
}

const clipsOf = (field: Field<readonly Field<Clip>[]>): readonly Clip[] | null =>
  ifKnown(field)?.flatMap((clip) => ifKnown(clip) ?? []) ?? null;
