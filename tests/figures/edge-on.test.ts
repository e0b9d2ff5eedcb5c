/** A film tilted until it is seen from its edge: no figure of it is made up, and nothing breaks. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const THICKNESSES: readonly Readonly<Record<string, string>>[] = [
  {},
  { 'subjects/soap/thickness': '80 to 700 nm' },
];

it.each(['89.5 deg', '90 deg', '-90 deg', '120 deg'])('at %s', (tilt) => {
  for (const thickness of THICKNESSES) {
    const core = coreWith(changed(EXAMPLE_PLAN, { 'shots/skin/tilt': tilt, ...thickness }));
    expect(core.findings(PLAN).map(({ rule }) => rule)).not.toContain('rule-failed');
    expect(core.figures(PLAN).get('skin')!.reflectance).toBeNull();
    expect(core.lensWords(PLAN, 'skin')).not.toBe('');
    expect(core.sheet(PLAN).shots.map(({ name }) => name)).toContain('skin');
    expect(core.solve(PLAN, 'skin')).not.toBeNull();
  }
});
