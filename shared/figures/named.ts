/** Entries by the name that others refer to them by, and who finds them. */
import type { Plan, TypesOf } from '../plan/generated/types.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Group } from '../plan/shape.ts';

/** An entry of the plan or of a file that it uses, by the name that others refer to it by. */
export interface Named<T> {
  readonly name: string;
  readonly group: Group;
  readonly file: FileId;
  readonly entry: EntryId;
  readonly fields: T;
}

/** The groups whose entries can be found by name, with what each holds. */
export interface GroupTypes {
  readonly bodies: TypesOf['body'];
  readonly lenses: TypesOf['lens'];
  readonly tubes: TypesOf['tube'];
  readonly converters: TypesOf['converter'];
  readonly 'close-ups': TypesOf['close-up'];
  readonly filters: TypesOf['filter'];
  readonly heads: TypesOf['head'];
  readonly stands: TypesOf['stand'];
  readonly rigs: TypesOf['rig'];
  readonly lights: TypesOf['light'];
  readonly subjects: TypesOf['subject'];
  readonly shots: TypesOf['shot'];
}

export type GroupName = keyof GroupTypes;

/** What a plan says for all its shots. */
export type PlanFields = Plan;

export interface Finder {
  readonly file: FileId;
  /** The entry of that name in the plan or what it uses; undefined where there is none. */
  find<G extends GroupName>(group: G, name: string): Named<GroupTypes[G]> | undefined;
}
