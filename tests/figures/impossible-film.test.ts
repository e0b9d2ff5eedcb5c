/** Films that there can't be: their figures are unknown, and nothing fails. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

it.each([
  ['refractive-index: 9', 'the index n must be 1 to 4'],
  ['refractive-index: 0.5', 'the index n must be 1 to 4'],
  ['size: 160 x 100 mm, sag: 90 mm', 'the sag is more than half of the film'],
])('a film of %s', (field, because) => {
  const core = coreWith(changed(EXAMPLE_PLAN, { 'subjects/soap': `{ kind: film, ${field} }` }));
  expect(core.findings(PLAN).map(({ rule }) => rule)).not.toContain('rule-failed');
  const figures = JSON.stringify(core.figures(PLAN).get('skin'));
  expect(figures).toContain(because);
  expect(core.frame(PLAN, 'skin', 16)).toMatchObject({ ok: false });
});
