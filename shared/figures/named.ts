/** Entries by the name that others refer to them by, and who finds them. */
import type { Group, GroupName } from '../plan/generated/names.ts';
import type { GroupTypes, Plan } from '../plan/generated/types.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Constants } from './constants.ts';

/** An entry of the plan or of a file that it uses, by the name that others refer to it by. */
export interface Named<T> {
  readonly name: string;
  readonly group: Group;
  readonly file: FileId;
  readonly entry: EntryId;
  readonly fields: T;
  /** As it is written, where its bench says otherwise. */
  readonly written?: T;
}

/** What a plan says for all its shots. */
export type PlanFields = Plan;

export interface Finder {
  readonly file: FileId;
  readonly constants: Constants;
  /** The plan as it is written, where this one has values changed. */
  readonly asWritten?: Finder;
  /** The entry of that name in the plan or what it uses; undefined where there is none. */
  find<G extends GroupName>(group: G, name: string): Named<GroupTypes[G]> | undefined;
}
