/**
 * How figures look up entries of the plan. The implementation records every answer as a
 * dependency.
 */
import type { Field } from '../plan/field.ts';
import type { GroupName } from '../plan/generated/names.ts';
import type { Clip, GroupTypes } from '../plan/generated/types.ts';
import type { Finder, Named, PlanFields } from './named.ts';
import type { RigLayout } from './rig-layout.ts';

/** Other entries of the plan to choose from; used only in the search for fixes. */
export interface Offer {
  names(group: GroupName): readonly string[];
  /**
   * A chain of these parts, from the sensor toward the subject, whether or not a rig has them in
   * this order.
   */
  layOut(parts: readonly string[]): RigLayout;
  /** How many shots of the plan use a rig. */
  shotsWith(rig: string): number;
}

export interface PlanReader extends Finder {
  /** The layout of a rig's parts, the same for every shot that uses the rig. */
  rig(rig: Named<GroupTypes['rigs']>): RigLayout;
  readonly offer: Offer;
  /** Whether clips of a shot are listed. */
  hasClips(shot: string): boolean;
  /** Clips of a shot that can be read, in the order of the list. */
  clipsOf(shot: string): readonly Clip[];
  /** The cuts of the plan that show a shot, with their `reframe`. */
  cutsOf(shot: string): readonly { readonly cut: string; readonly reframe: number | null }[];
  plan<K extends keyof PlanFields>(key: K): PlanFields[K];
}

/**
 * The result of looking up a reference: found, not written, or written but not available, which
 * has its own finding.
 */
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
