/**
 * The rest of the bench in the real editor: which of the tubes would reach the field, the contrast by
 * aperture, what was measured, what carries the rig and what it may do to somebody.
 */
import { expect } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'winter-window.shootplan.yaml';

test('a field out of reach names rigs of the kit, and one of them reaches it', async ({ open }) => {
  const plan = changed(EXAMPLE_PLAN, { 'shots/frost/field': '24 mm' });
  const { workbench } = await open(startWebHost, { [FILE]: plan });
  await workbench.hideSideBar();
  await workbench.goTo('24 mm\n    aperture', plan);
  await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(1);
  expect(await workbench.hover()).toContain('body-a, twice, macro-100');
  await workbench.picture('kit search');
  await workbench.escape();
  await workbench.applyFix('Build the rig as body-a + twice');
  await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
});

test('contrast by aperture, measurements and loads are told where they stand', async ({ open }) => {
  const plan = changed(EXAMPLE_PLAN, {
    'shots/frost/measured': '{ effective-f-number: 11.5 }',
    'rigs/bench/support': '{ foot: 10 mm }',
    'lights/panel/overhead': 'yes',
    'preflight/once/overhead-tethered': 'open',
  });
  const { workbench } = await open(startWebHost, { [FILE]: plan });
  await workbench.hideSideBar();
  await workbench.goTo('f/8\n    shutter', plan);
  await expect
    .poll(async () => (await workbench.drawnLines()).join('\n'), WAIT)
    .toContain('f/12 effective (measured)');
  const hover = await workbench.hover();
  expect(hover).toContain('(measured)');
  expect(hover).toMatch(/contrast/i);
  await workbench.picture('contrast by aperture');
  await workbench.escape();
  const problems = (await workbench.problems()).join('\n');
  expect(problems).toContain('rig-pitches');
  expect(problems).toContain('overhead-load');
  await workbench.picture('loads in the list');
});
