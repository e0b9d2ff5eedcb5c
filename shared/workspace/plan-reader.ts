/** How the figures read a plan: names through the files that it uses, fields from the plan itself. */

import type { Query } from '../engine/graph.ts';
import type { PlanFields, PlanReader } from '../figures/reader.ts';
import type { RigLayout } from '../figures/rig-layout.ts';
import type { Field } from '../plan/field.ts';
import type { FileId } from '../plan/place.ts';
import type { Entries } from './entries.ts';
import { keyOf } from './keys.ts';
import type { Names } from './names.ts';

export function planReader(
  file: FileId,
  entries: Entries,
  names: Names,
  rigLayout: Query<RigLayout>,
): PlanReader {
  return {
    file,
    rig: ({ name }) => rigLayout(keyOf(file, name)),
    find: (group, name) => names.find(file, group, name),
    hasClips: (shot) => entries.source(file, `clips/${shot}`) !== undefined,
    plan: (key) => planField(file, entries, key),
  };
}

function planField<K extends keyof PlanFields>(
  file: FileId,
  entries: Entries,
  key: K,
): PlanFields[K] {
  const lowered = entries.lowered(file, key);
  if (lowered?.value !== undefined) return lowered.value as PlanFields[K];
  const missing: Field<never> = {
    state: lowered ? 'invalid' : 'missing',
    at: { file, entry: key, path: [] },
  };
  return missing as PlanFields[K];
}
