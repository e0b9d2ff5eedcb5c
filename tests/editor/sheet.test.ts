/** The sheet beside the text in the real editor: light, dark and narrow; there and back. */
import type { Frame } from 'playwright-core';
import { describe, expect } from 'vitest';
import { sheetIn } from './live-sheet.ts';
import { startNodeHost } from './node-host.ts';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const PLAN = sample(FILE);
const FILES = { [FILE]: PLAN, [KIT]: sample(KIT) };

const tile = (sheet: Frame, shot: string, label: string) =>
  sheet.locator(`.shot[data-shot="${shot}"] .setting`).filter({ hasText: label });

describe.each([
  ['light', 'Default Light Modern', startWebHost, { width: 1500, height: 900 }],
  ['dark', 'Default Dark Modern', startNodeHost, { width: 1500, height: 900 }],
  ['high contrast', 'Default High Contrast', startWebHost, { width: 1500, height: 900 }],
  ['narrow', 'Default Light Modern', startWebHost, { width: 900, height: 900 }],
] as const)('%s', (name, theme, startHost, viewport) => {
  test('the sheet follows cursor and edits, and a click goes to the line', async ({ open }) => {
    const { workbench } = await open(startHost, FILES, {
      settings: { 'workbench.colorTheme': theme },
      viewport,
    });
    await workbench.hideSideBar();
    await workbench.run('Lamella: Show the Shot Sheet beside the Plan');
    const sheet = await sheetIn(workbench.page);
    expect(await sheet.locator('.shot').count()).toBe(3);

    // The cursor leads.
    await workbench.focusText();
    await workbench.goTo('  swirl:', PLAN);
    const swirl = sheet.locator('.shot[data-shot="swirl"]');
    await expect.poll(() => swirl.getAttribute('class'), WAIT).toContain('current');
    await expect
      .poll(() => swirl.evaluate((one) => one.getBoundingClientRect().top < innerHeight), WAIT)
      .toBe(true);
    await workbench.picture(`sheet, ${name}`);

    // So does an edit.
    await workbench.goTo('f/16', PLAN);
    await workbench.page.keyboard.press('Delete');
    for (let count = 1; count < 'f/16'.length; count++)
      await workbench.page.keyboard.press('Delete');
    await workbench.page.keyboard.type('f/32');
    const aperture = tile(sheet, 'bands-falling', 'Aperture').locator('.value');
    await expect.poll(() => aperture.textContent(), WAIT).toBe('f/32');
    // The status bar goes on being told, too.
    const status = () => workbench.status.textContent();
    await expect.poll(status, WAIT).toContain('2 of 3 shots clear');

    // And back: a click in the sheet selects the value in the text.
    await tile(sheet, 'first-black', 'White balance').click();
    const line = PLAN.split('\n').findIndex(
      (_, index, all) =>
        index > all.indexOf('  first-black:') && all[index]!.includes('white-balance'),
    );
    await expect
      .poll(() => workbench.page.locator('#status\\.editor\\.selection').textContent(), WAIT)
      .toContain(`Ln ${line + 1}`);

    // By keyboard, too.
    await tile(sheet, 'first-black', 'ISO').locator('button').focus();
    await workbench.page.keyboard.press('Enter');
    await expect
      .poll(() => workbench.page.locator('#status\\.editor\\.selection').textContent(), WAIT)
      .toContain(`Ln ${line - 1}`);
  });
});
