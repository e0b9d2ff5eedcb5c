/** Settings as the plan writes them: what a take was shot with where nobody says otherwise. */
import { SETTING_KINDS, type SettingKey } from '../../bring-back/day.ts';
import { isKnown } from '../../plan/field.ts';
import { kindOf } from '../../quantity/index.ts';
import type { SaidShot } from './said.ts';

/** By key; left out: not known, or a range that nobody can set. */
export function plannedSettings({ bench: { fields } }: SaidShot): Readonly<Record<string, string>> {
  const keys = Object.keys(SETTING_KINDS) as SettingKey[];
  return Object.fromEntries(
    keys.flatMap((key) => {
      const field = fields[key];
      if (!isKnown<unknown>(field) || field.range !== undefined) return [];
      return [[key, kindOf(SETTING_KINDS[key]).print(field.value)] as const];
    }),
  );
}
