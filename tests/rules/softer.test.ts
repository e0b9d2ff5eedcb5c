/** Two findings that pull the aperture apart, and depth that only diffraction gives. */
import { expect, it } from 'vitest';
import { coreWith, PLAN } from '../support/plans.ts';
import { read } from '../tidy/support/project.ts';

const core = coreWith(read('samples/first-draft.shootplan.yaml'));
const found = (rule: string) => core.findings(PLAN).find((one) => one.rule === rule)!;

// At f/25 the Airy disk, 2.44·0.55 µm·25 = 34 µm (Hecht, Optics), exceeds diagonal/1500 of the
// recorded 36 × 20.25 mm, 28 µm: what is sharp by focus is less than the depth of field.
it('says what is sharp by focus, and that stopping down further softens everything', () => {
  const finding = found('depth-short');
  const [, depth = '', sharp = ''] =
    /Depth of field is ([\d.]+) mm.*only ([\d.]+) mm is sharp/.exec(
      `${finding.what} ${finding.why}`,
    ) ?? [];
  expect(Number(sharp) / Number(depth)).toBeGreaterThan(0.7);
  expect(Number(sharp) / Number(depth)).toBeLessThan(0.9);
  const [fix] = core.fixesOf(finding);
  expect(fix?.title).toMatch(/^Stop down to f\/\d+/);
  expect(fix?.sideEffects).toMatch(/^everything gets softer; /);
});

it('too dark and too shallow at once name the way to solve both', () => {
  for (const rule of ['depth-short', 'exposure-off'])
    expect(found(rule).why).toContain('Solve this shot (`lamella solve`)');
});
