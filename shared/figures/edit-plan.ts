/**
 * The edit as the plan writes it, with the data of its shots: everything that its figures follow
 * from.
 */
import type { Field } from '../plan/field.ts';
import type { Clip, Cut, Deliver, EditMusic } from '../plan/generated/types.ts';
import type { FileId, Place } from '../plan/place.ts';
import type { Bytes } from '../quantity/brands.ts';
import type { Footage } from './edit-footage.ts';

export interface PlannedCut {
  readonly name: string;
  readonly at: Place;
  /** null: its text can't be read; a finding of its own says so. */
  readonly fields: Cut | null;
}

/** A shot that cuts show. */
export interface ShotInEdit {
  /** null: the shot can't be read, or there is none of the name. */
  readonly footage: Footage | null;
  /** What was recorded of it, in the order of the list; null: nothing is listed. */
  readonly clips: readonly Clip[] | null;
}

export interface EditPlan {
  readonly file: FileId;
  readonly deliver: Field<Deliver>;
  readonly music: Field<EditMusic>;
  readonly memory: Field<Bytes>;
  /** In the order of the plan. */
  readonly cuts: readonly PlannedCut[];
  readonly shots: ReadonlyMap<string, ShotInEdit>;
}
