/** Solution a shot in the real editor: asked for at the shot, shown with its reasons, applied. */
import { expect } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'crystal.shootplan.yaml';
/** Too little depth; with enough of it, too little light. */
const PLAN = planTemplate()
  .replace('aperture: f/8\n', 'aperture: f/2.8\n')
  .replace('iso: 3200\n', 'iso: 400\n');

test('a shot is solved by the changes that are ticked, beside the plan as it would be', async ({
  open,
}) => {
  const { workbench } = await open(startWebHost, { [FILE]: PLAN });
  const { page } = workbench;
  await workbench.goTo('f/2.8\n', PLAN);
  await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBeGreaterThan(0);
  await workbench.applyFix('Solve first by changing its settings');
  const list = page.locator('.quick-input-widget:visible');
  const title = () => list.locator('.quick-input-title').textContent();
  const solved = page.locator('.monaco-diff-editor .editor.modified .view-lines');
  await expect.poll(title, WAIT).toMatch(/first: 2 of 2 changes, no errors or warnings left/);
  const rows = list.locator('.monaco-list-row');
  const row = rows.filter({ hasText: 'aperture' });
  const said = async () => ((await row.textContent()) ?? '').replace(/\u00a0/g, ' ');
  expect(await said()).toMatch(/f\/2\.8 → f\/\d/);
  expect(await said()).toMatch(/Without it: Depth of field is [\d.]+ mm; crystal needs 1 mm/);
  const cost = await list.locator('input[type=text]').first().getAttribute('placeholder');
  expect(cost).toMatch(/^exposure: .* → .* · depth of field: 0\.48 mm → [\d.]+ mm/);
  await workbench.picture('solve, all ticked');
  // What remains and the text follow the ticks.
  await row.locator('input[type=checkbox], .monaco-checkbox').first().click();
  await expect.poll(title, WAIT).toMatch(/1 finding left|\d findings left/);
  await expect.poll(said, WAIT).toMatch(/Left: Depth of field is/);
  await expect.poll(() => solved.textContent(), WAIT).toMatch(/aperture:\sf\/2\.8/);
  await workbench.picture('solve, one not ticked');
  await row.locator('input[type=checkbox], .monaco-checkbox').first().click();
  await expect.poll(title, WAIT).toContain('no errors or warnings left');
  await page.keyboard.press('Enter');
  await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBe(0);
  await expect.poll(() => workbench.status.textContent(), WAIT).toContain('1 of 1 shot clear');
  expect(await page.locator('.monaco-diff-editor').count()).toBe(0);
  expect((await workbench.drawnLines()).join('\n')).not.toContain('aperture: f/2.8');
  await workbench.picture('solve, applied');
  // One edit, undone at once.
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await workbench.drawnLines()).join('\n')).toContain('f/2.8');
  await expect.poll(() => page.locator('.tab.active.dirty').count(), WAIT).toBe(0);
});
