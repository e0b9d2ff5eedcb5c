/** What the plan says of a shot when its sheet is made: what a filled-in sheet is compared with. */
import type { ShotSheet } from '../../api/sheet.ts';
import { SETTING_KINDS, type SettingKey } from '../../bring-back/day.ts';
import { ifKnown, isKnown } from '../../plan/field.ts';
import { kindOf } from '../../quantity/index.ts';
import type { SaidShot } from './said.ts';

/** Settings that a take had where nobody says otherwise, by key; left out: not known, or a range that nobody can set. */
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

/** null: auto ISO, or an exposure that is not known, has nothing to be compared with. */
export function exposureAsked({ bench, figures }: SaidShot): ShotSheet['exposureAsked'] {
  const { body, iso, lights } = bench;
  const error = figures.exposureErrorStops;
  if (!body || !iso.known || iso.value === 'auto' || !error.known || !lights.known) return null;
  return {
    body: body.name,
    iso: String(iso.value),
    planned: kindOf('over-under').print(Math.round(error.value * 100) / 100 + 0),
    lights: lights.value.map(({ name }) => name),
  };
}

/** null: nothing lasts for so long that it is counted. */
export function lifetimeAsked({
  bench: { subject },
  figures,
}: SaidShot): ShotSheet['lifetimeAsked'] {
  if (!subject || (!figures.lifeS.known && figures.lifeS.applies === false)) return null;
  const field = subject.fields.lifetime;
  const isOne = isKnown(field) && field.range === undefined;
  return {
    subject: subject.name,
    planned: isOne ? kindOf('time').print(ifKnown(field)) : null,
  };
}
