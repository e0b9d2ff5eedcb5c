/**
 * The sample whose lens was measured: its rows are those that the script beside it makes, and its shots
 * are what rays through the published prescription come to (M. Laikin, Lens Design, 4th ed., p. 91),
 * traced by another program than the script.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { LENSES, real, SENSOR_MM } from '../published/support/published-lenses.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const inSamples = (name: string) =>
  fileURLToPath(new URL(`../../samples/${name}`, import.meta.url));
const text = readFileSync(inSamples('moth-wings.shootplan.yaml'), 'utf8');

it('has the rows that its script makes', () => {
  const rows = execFileSync(process.execPath, [inSamples('moth-wings.mjs')], { encoding: 'utf8' });
  expect(rows.split('\n').filter((line) => line !== '')).toHaveLength(3);
  expect(/\n {6}bench:.*\n((?: {8}- .*\n)+)/.exec(text)![1]).toBe(rows);
});

/** Tubes and field of each shot, in mm. */
const SHOTS = [
  ['whole-moth', 36, 130],
  ['one-wing', 36, 90],
  ['eye', 56, 70],
] as const;

const lens = real(LENSES.find(({ of }) => of.name === 'telephoto')!);

/** The lens with its ring turned until it shows the field. */
function tracedFor(tubesMm: number, fieldMm: number) {
  let [far, near] = [0, lens.closest];
  for (let step = 0; step < 50; step++) {
    const half = (far + near) / 2;
    if (lens.at(tubesMm, half).magnification < SENSOR_MM.width / fieldMm) far = half;
    else near = half;
  }
  return lens.at(tubesMm, near);
}

it.each(SHOTS)(
  'knows %s within its bounds, which are narrower than without the bench',
  (shot, tubes, field) => {
    const traced = tracedFor(tubes, field);
    const its = coreWith(text).figures(PLAN).get(shot)!;
    const bare = coreWith(changed(text, { 'kit/lenses/long-200/bench': null }))
      .figures(PLAN)
      .get(shot)!;
    const truth = { workingDistanceMm: traced.workingMm, lightLossStops: traced.lightStops };
    for (const [figure, value] of Object.entries(truth)) {
      const [low, high] = its.bounds![figure as keyof typeof truth] as readonly [number, number];
      expect(value, figure).toBeGreaterThan(low);
      expect(value, figure).toBeLessThan(high);
      const [least, most] = (bare.bounds?.[figure as keyof typeof truth] ?? [0, 0]) as [
        number,
        number,
      ];
      if (figure === 'lightLossStops') expect(high - low).toBeLessThan((most - least) / 2);
    }
  },
);
