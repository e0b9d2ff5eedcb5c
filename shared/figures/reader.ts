/** How figures ask the plan for entries: every answer is recorded as a dependency by who gives it. */
import type { Field } from '../plan/field.ts';
import type { GroupName } from '../plan/generated/names.ts';
import type { GroupTypes } from '../plan/generated/types.ts';
import type { Finder, Named, PlanFields } from './named.ts';
import type { RigLayout } from './rig-layout.ts';

/** What else the plan holds to choose from: asked only where ways out are looked for. */
export interface Offer {
  names(group: GroupName): readonly string[];
  /** Parts put together, from the sensor toward the subject, whether or not a rig has them so. */
  layOut(parts: readonly string[]): RigLayout;
  /** How many shots of the plan use a rig. */
  shotsWith(rig: string): number;
}

export interface PlanReader extends Finder {
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
  reader: Finder,
  group: G,
  field: Field<string>,
): Lookup<GroupTypes[G]> {
  if (field.state !== 'known') return { state: field.state };
  const entry = reader.find(group, field.value);
  return entry ? { state: 'found', entry } : { state: 'invalid' };
}
