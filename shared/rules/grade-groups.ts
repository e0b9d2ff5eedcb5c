/** Cuts that share one grade, and their shots with light and white balance. */

import type { CutFigures, EditFigures } from '../figures/edit-figures.ts';
import { ifKnown } from '../plan/field.ts';
import type { ShotSummary } from './plan-rule.ts';

export interface GradedCut {
  readonly cut: CutFigures;
  readonly shot: ShotSummary;
}

/** By the grade's name; '' is the one that all cuts without a name share. In the order of the edit. */
export function gradeGroups(
  edit: EditFigures | null,
  shots: readonly ShotSummary[],
): ReadonlyMap<string, readonly GradedCut[]> {
  const groups = new Map<string, GradedCut[]>();
  if (!edit) return groups;
  const byName = new Map(shots.map((shot) => [shot.shot, shot]));
  for (const cut of edit.cuts) {
    const shot = cut.shot === null ? undefined : byName.get(cut.shot);
    if (!shot || !cut.fields || cut.fields.grade.state === 'invalid') continue;
    const grade = ifKnown(cut.fields.grade) ?? '';
    const group = groups.get(grade);
    if (group) group.push({ cut, shot });
    else groups.set(grade, [{ cut, shot }]);
  }
  return groups;
}

/** The most frequent value; of equally frequent ones, the first. */
export function usual<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}
