/** Solution a shot in the real editor: asked for at the shot, shown with its reasons, applied. */
import { expect } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'crystal.shootplan.yaml';
/** Too little depth, and with it too much light. */
const PLAN = planTemplate().replace('aperture: f/8\n', 'aperture: f/2.8\n');

test('a shot is solved once its changes and their reasons were read', async ({ open }) => {
  const { workbench } = await open(startWebHost, { [FILE]: PLAN });
  await workbench.goTo('f/2.8\n', PLAN);
  await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBeGreaterThan(0);
  await workbench.applyFix('Solve first by changing its settings');
  const dialog = workbench.page.locator('.monaco-dialog-box');
  await dialog.waitFor();
  const said = ((await dialog.textContent()) ?? '').replace(/\u00a0/g, ' ');
  expect(said).toMatch(/aperture/);
  expect(said).toMatch(/Depth of field is [\d.]+ mm; crystal needs 1 mm/);
  await workbench.picture('solve, asked');
  // Nothing is changed before it is wanted.
  expect((await workbench.drawnLines()).join('\n')).toContain('aperture: f/2.8');
  await dialog.getByRole('button', { name: 'Apply' }).click();
  await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBe(0);
  await expect.poll(() => workbench.status.textContent(), WAIT).toContain('1 of 1 shot clear');
  expect((await workbench.drawnLines()).join('\n')).not.toContain('aperture: f/2.8');
  await workbench.picture('solve, applied');
});
