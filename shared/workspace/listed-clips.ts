/** The clips of a shot as the plan lists them. */
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import type { Clip } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';

type Verdict = 'keep' | 'maybe' | 'reject';

export interface ListedClip {
  readonly shot: string;
  /** As the plan writes it: relative to the plan or to the folder of the media. */
  readonly path: string;
  /** null: not judged yet. */
  readonly verdict: Verdict | null;
  readonly note: string | null;
  readonly at: Place;
}

export type ClipsField = Field<readonly Field<Clip>[]>;

export function clipsOf(shot: string, field: ClipsField | undefined): readonly ListedClip[] {
  if (field?.state !== 'known') return [];
  return field.value.flatMap((item): ListedClip[] => {
    if (!isKnown(item) || !isKnown(item.value.file)) return [];
    const { file, verdict, note } = item.value;
    return [
      {
        shot,
        path: file.value,
        verdict: ifKnown(verdict) ?? null,
        note: ifKnown(note) ?? null,
        at: file.at,
      },
    ];
  });
}
