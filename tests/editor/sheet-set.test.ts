/** A click in the live sheet sets a value in the plan, and one undo takes it back. */
import { expect } from 'vitest';
import { violationsIn } from './axe.ts';
import { sheetIn } from './live-sheet.ts';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const PLAN = sample(FILE)
  .replace('aperture: f/16\n', 'aperture: f/16   # as tried\n')
  .replace('tilt: 6 deg\n', 'tilt: 6 deg   # by the mark\n');

test('a click in a chart of the sheet is one edit of the plan', async ({ open }) => {
  const { workbench } = await open(
    startWebHost,
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    {
      viewport: { width: 1500, height: 900 },
      settings: { 'workbench.colorTheme': 'Default High Contrast Light' },
    },
  );
  await workbench.hideSideBar();
  await workbench.run('Lamella: Show the Shot Sheet beside the Plan');
  const sheet = await sheetIn(workbench.page);
  const shot = sheet.locator('.shot[data-shot="bands-falling"]');
  const chart = shot.locator('figure[data-sets="aperture"]');
  const tile = shot.locator('.setting').filter({ hasText: 'Aperture' }).locator('.value');
  const drawn = async () => (await workbench.drawnLines()).join('\n');
  await workbench.focusText();
  await workbench.goTo('f/16', PLAN);

  await chart.locator('[data-value="f/20"]').click();
  await expect.poll(drawn, WAIT).toMatch(/aperture: f\/20.*# as tried/);
  await expect.poll(() => tile.textContent(), WAIT).toBe('f/20');
  await workbench.picture('sheet, aperture set by a click');

  await workbench.focusText();
  await workbench.page.keyboard.press('Control+z');
  await expect.poll(drawn, WAIT).toMatch(/aperture: f\/16.*# as tried/);
  await expect.poll(() => tile.textContent(), WAIT).toBe('f/16');

  // Tilt against working distance: the same for the tilt.
  const tilts = shot.locator('figure[data-sets="tilt"]');
  const tilted = shot.locator('.setting').filter({ hasText: 'Tilt' }).locator('.value').first();
  expect(await tilts.locator('h3').textContent()).toBe('Tilt and working distance');
  await tilts.locator('[data-value="7 deg"]').click();
  await expect.poll(drawn, WAIT).toMatch(/tilt: 7 deg.*# by the mark/);
  await expect.poll(() => tilted.textContent(), WAIT).toContain('7°');
  expect(await tilts.locator('.chooser select').inputValue()).toBe('7 deg');
  await workbench.picture('sheet, tilt set by a click');
  expect(await violationsIn(sheet)).toEqual([]);
  await workbench.focusText();
  await workbench.page.keyboard.press('Control+z');
  await expect.poll(drawn, WAIT).toMatch(/tilt: 6 deg.*# by the mark/);
  await expect.poll(() => tilted.textContent(), WAIT).toContain('6°');
  expect(await drawn()).toMatch(/aperture: f\/16.*# as tried/);

  // The list of shots leads to each of them.
  await sheet.locator('.shots [data-to="swirl"]').click();
  const swirl = sheet.locator('.shot[data-shot="swirl"] h2');
  await expect
    .poll(() => swirl.evaluate((one) => one.getBoundingClientRect().top < innerHeight), WAIT)
    .toBe(true);

  // By keyboard, from the list of the same values.
  await chart.locator('.chooser select').selectOption('f/18');
  await expect.poll(drawn, WAIT).toMatch(/aperture: f\/18.*# as tried/);
});
