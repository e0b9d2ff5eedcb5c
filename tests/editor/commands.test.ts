/** The commands of the Lamella category, by their titles in the command palette. */
import { expect } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { inEachHost, WAIT } from './opened.ts';

const FILE = 'crystal.shootplan.yaml';
const SLOW = '1/20 s';
const PLAN = planTemplate().replace('shutter: 1/100 s', `shutter: ${SLOW}`);

inEachHost({ [FILE]: PLAN }, (test) => {
  test('a restarted server finds again what it had found', async ({ workbench }) => {
    await workbench.goTo(SLOW, PLAN);
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(1);
    const forgotten = workbench.removed(workbench.status);
    await workbench.run('Lamella: Restart the Language Server');
    await forgotten;
    await expect.poll(() => workbench.status.textContent(), WAIT).toContain('0 of 1 shot clear');
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(1);
  });

  test('the log opens in the panel', async ({ workbench }) => {
    await workbench.run("Lamella: Show the Language Server's Log");
    const choice = workbench.page.locator('.panel .monaco-select-box, .panel select').first();
    await expect.poll(() => choice.textContent(), WAIT).toContain('Lamella');
    await workbench.focusText();
  });

  test('a new plan is filled in and has nothing to find', async ({ workbench }) => {
    await workbench.run('Lamella: New Shoot Plan from a Template');
    const steps = workbench.page.locator('.quick-input-title');
    for (const step of ['1 of 3', '2 of 3', '3 of 3']) {
      await expect.poll(() => steps.textContent(), WAIT).toContain(step);
      await workbench.picture(`new plan, ${step}`);
      await workbench.page.keyboard.press('Enter');
    }
    await expect.poll(() => workbench.language.textContent(), WAIT).toBe('Shoot Plan');
    await expect.poll(async () => (await workbench.drawnLines())[1], WAIT).toBe('title: New plan');
    await expect.poll(() => workbench.status.textContent(), WAIT).toContain('1 of 1 shot clear');
    expect(await workbench.squiggles('error').count()).toBe(0);
    expect(await workbench.squiggles('warning').count()).toBe(0);
  });
});
