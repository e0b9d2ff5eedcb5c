/** The live sheet at work: ticks, cuts, a kit changed on the disk, its file, a window reloaded. */
import { spawnSync } from 'node:child_process';
import type { Frame } from 'playwright-core';
import { expect } from 'vitest';
import { motionOf, violationsIn } from './axe.ts';
import { sheetIn } from './live-sheet.ts';
import { startNodeHost } from './node-host.ts';
import { sample, test, WAIT } from './opened.ts';
import { CLI } from './paths.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const CUTS = `
edit:
  cuts:
    opening:
      shot: swirl
      from: 2 s
      duration: 4 s
`;
const PLAN = sample(FILE) + CUTS;
const CHANGED = sample(KIT).replace('from-sensor: 0.85 m', 'from-sensor: 0.9 m');

const valuesIn = (sheet: Frame): Promise<string[]> =>
  sheet.locator('.setting .value').allTextContents();

/** What the command line makes of the folder as it lies there. */
function page(folder: string): string {
  const { status, stdout } = spawnSync(process.execPath, [CLI, 'sheet', FILE], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(status).toBe(0);
  return stdout;
}

const valuesOf = (html: string): string[] =>
  [...html.matchAll(/class="value[^"]*">([^<]*)</g)].map(([, value]) => value!);

test('the live sheet ticks, follows, saves, and is there again after a reload', async ({
  open,
}) => {
  const { host, workbench } = await open(
    startNodeHost,
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    {
      viewport: { width: 1500, height: 900 },
      settings: { 'lamella.initials': 'op', 'workbench.colorTheme': 'Default High Contrast' },
    },
  );
  await workbench.hideSideBar();
  await workbench.run('Lamella: Show the Shot Sheet beside the Plan');
  let sheet = await sheetIn(workbench.page);
  const drawn = async () => (await workbench.drawnLines()).join('\n');

  // A kit that nobody has open changes on the disk.
  const before = await valuesIn(sheet);
  host.folder.write(KIT, CHANGED);
  const after = valuesOf(page(host.folder.path));
  expect(after).not.toEqual(before);
  await expect.poll(() => valuesIn(sheet), WAIT).toEqual(after);

  // A tick is one edit of the plan, with the day and by whom.
  await workbench.focusText();
  await workbench.goTo('preflight:', PLAN);
  const box = sheet.locator('.plan [data-check="card-and-battery"]');
  await box.click();
  await expect
    .poll(drawn, WAIT)
    .toMatch(
      /once: \{ card-and-battery: \{ done: \d{4}-\d\d-\d\d, by: op \}, foot-balanced: open \}/,
    );
  await expect.poll(() => box.isChecked(), WAIT).toBe(true);
  await box.click();
  await expect.poll(drawn, WAIT).toContain('once: { card-and-battery: open, foot-balanced: open }');
  await expect.poll(() => box.isChecked(), WAIT).toBe(false);
  const own = sheet.locator('.shot[data-shot="swirl"] [data-check="focus-at-full-size"]');
  await own.focus();
  await own.press('Space');
  await expect.poll(drawn, WAIT).toMatch(/focus-at-full-size: \{ done: \d{4}-\d\d-\d\d, by: op \}/);
  await expect.poll(() => own.isChecked(), WAIT).toBe(true);
  expect(await own.evaluate((one) => one === document.activeElement)).toBe(true);
  await workbench.focusText();
  await workbench.page.keyboard.press('Control+z');
  await expect.poll(() => own.isChecked(), WAIT).toBe(false);

  // It follows keys, and cuts to their shots.
  const tile = sheet.locator('.shot[data-shot="first-black"] [data-key="shutter"].at-cursor');
  const inSight = (selector: string) =>
    sheet
      .locator(selector)
      .first()
      .evaluate((one) => {
        const { top, bottom } = one.getBoundingClientRect();
        return top >= 0 && bottom <= innerHeight;
      });
  await workbench.goTo('field: 44 mm', PLAN);
  await workbench.goTo('shutter: 1/50 s', PLAN.replace('shutter: 1/50 s', '_'));
  await expect.poll(() => tile.count(), WAIT).toBeGreaterThan(0);
  await workbench.goTo('from: 2 s', PLAN);
  await expect
    .poll(() => sheet.locator('.plan tr.at-cursor').getAttribute('data-cut'), WAIT)
    .toBe('opening');
  const here = '.shot[data-shot="swirl"].current .cut-here';
  await expect.poll(() => sheet.locator(here).textContent(), WAIT).toContain('opening');
  await expect.poll(() => inSight(here), WAIT).toBe(true);
  await workbench.picture('sheet at a cut');
  expect(await violationsIn(sheet)).toEqual([]);
  expect(await motionOf(sheet)).toEqual([]);

  // The page that it is saved as is the command line's.
  await workbench.save();
  await workbench.run('Lamella: Save the Sheet…');
  const named = workbench.page.locator('.quick-input-widget:visible input[type=text]').first();
  await expect.poll(() => named.inputValue(), WAIT).toMatch(/tide-panes\.html$/);
  await workbench.page.keyboard.press('Enter');
  const saved = () => {
    try {
      return host.folder.read('tide-panes.html');
    } catch {
      return '';
    }
  };
  const wanted = page(host.folder.path);
  await expect.poll(() => saved() === wanted, WAIT).toBe(true);

  // By an address without a file: with one, the editor opens nothing of what was open before.
  await workbench.page.goto(host.address());
  sheet = await sheetIn(workbench.page);
  await expect.poll(() => valuesIn(sheet), WAIT).toEqual(after);
});
