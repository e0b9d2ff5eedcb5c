/** How figures ask the plan for entries: every answer is recorded as a dependency by who gives it. */
import type { Field } from '../plan/field.ts';
import type { Plan, TypesOf } from '../plan/generated/types.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Group } from '../plan/shape.ts';
import type { RigLayout } from './rig-layout.ts';

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

/** What else the plan holds to choose from: asked only where ways out are looked for. */
export interface Offer {
  names(group: GroupName): readonly string[];
  /** Parts put together, from the sensor toward the subject, whether or not a rig has them so. */
  layOut(parts: readonly string[]): RigLayout;
  /** How many shots of the plan use a rig. */
  shotsWith(rig: string): number;
}

export interface PlanReader {
  readonly file: FileId;
  /** The entry of that name in the plan or what it uses; undefined where there is none. */
  find<G extends GroupName>(group: G, name: string): Named<GroupTypes[G]> | undefined;
  /** The parts of a rig laid out, the same for every shot that uses it. */
  rig(rig: Named<GroupTypes['rigs']>): RigLayout;
  readonly offer: Offer;
  /** Whether clips of a shot are listed. */
  hasClips(shot: string): boolean;
  plan<K extends keyof PlanFields>(key: K): PlanFields[K];
}

/** A reference looked up: found, not written, or written and not to be had (its own finding says). */
export type Lookup<T> =
  | { readonly state: 'found'; readonly entry: Named<T> }
  | { readonly state: 'missing' | 'invalid' };

export function lookUp<G extends GroupName>(
  reader: PlanReader,
  group: G,
  field: Field<string>,
): Lookup<GroupTypes[G]> {
  if (field.state !== 'known') return { state: field.state };
  const entry = reader.find(group, field.value);
  return entry ? { state: 'found', entry } : { state: 'invalid' };
}
