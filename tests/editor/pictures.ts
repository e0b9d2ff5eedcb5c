/**
 * `npm run pictures`: the README's pictures, made from the samples in the real editor. A picture
 * is looked at before it is committed; what must be in it is asserted all the same.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CLI, PICTURES, ROOT } from './paths.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, Workbench } from './workbench.ts';

const FILE = 'first-draft.shootplan.yaml';
const sample = (name: string) => readFileSync(path.join(ROOT, 'samples', name), 'utf8');
const PLAN = sample(FILE);
/** A value of the one shot that can be worked out; its hover is what is shown. */
const SHOWN = '40 mm\n';

/** Room for what the picture is about. */
const BARE = {
  'breadcrumbs.enabled': false,
  'editor.stickyScroll.enabled': false,
  'problems.defaultViewMode': 'table',
  'window.commandCenter': false,
  'workbench.activityBar.location': 'hidden',
  'workbench.layoutControl.enabled': false,
};

const THEMES = { light: 'Default Light Modern', dark: 'Default Dark Modern' };

test.each(Object.entries(THEMES))(
  'a first draft with what is found in it, %s',
  async (name, theme) => {
    mkdirSync(PICTURES, { recursive: true });
    const browser = await launchBrowser();
    const host = await startWebHost(
      { [FILE]: PLAN },
      { settings: { ...BARE, 'workbench.colorTheme': theme } },
    );
    try {
      const workbench = await Workbench.open(browser, host, FILE, {
        viewport: { width: 1200, height: 800 },
      });
      // First, for beside it the text is so narrow that it is scrolled sideways, and stays so.
      await workbench.hideSideBar();
      const text = workbench.page.locator('.editor-instance .overflow-guard').first();
      await expect.poll(async () => (await text.boundingBox())?.width ?? 0).toBeGreaterThan(1100);
      await workbench.goTo(SHOWN, PLAN);
      await workbench.squiggles('error').first().waitFor({ timeout: 30_000 });
      expect((await workbench.problems()).length).toBeGreaterThan(3);
      await workbench.focusText();
      expect(await workbench.hover()).toContain('0.9x');
      const file = path.join(PICTURES, `first-draft-${name}.png`);
      await workbench.page.screenshot({ path: file, animations: 'disabled' });
    } finally {
      await browser.close();
      await host.stop();
    }
  },
);

const FILM = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';

/** One edit of the tilt: the frame of a shot before it and after it. */
test.each([
  ['before', '2 deg'],
  ['after', '6 deg'],
])('a frame %s an edit of its tilt', (name, tilt) => {
  mkdirSync(PICTURES, { recursive: true });
  const folder = mkdtempSync(path.join(tmpdir(), 'lamella-frames-'));
  const shot = sample(FILM).split('  bands-falling:')[1]!;
  const plan = sample(FILM).replace(shot, shot.replace('tilt: 6 deg', `tilt: ${tilt}`));
  writeFileSync(path.join(folder, FILM), plan);
  writeFileSync(path.join(folder, KIT), sample(KIT));
  const file = path.join(PICTURES, `frame-tilt-${name}.png`);
  const { status, stderr } = spawnSync(
    process.execPath,
    [
      CLI,
      'frame',
      path.join(folder, FILM),
      '--shot',
      'bands-falling',
      '--width',
      '400',
      '-o',
      file,
      '--force',
    ],
    { encoding: 'utf8' },
  );
  rmSync(folder, { recursive: true });
  expect(status, stderr).toBe(0);
  expect(stderr.includes('Stripes mark')).toBe(name === 'before');
});

test.each(Object.entries(THEMES))('the sheet beside the text, %s', async (name, theme) => {
  mkdirSync(PICTURES, { recursive: true });
  const browser = await launchBrowser();
  const files = { [FILM]: sample(FILM), [KIT]: sample(KIT) };
  const host = await startWebHost(files, { settings: { ...BARE, 'workbench.colorTheme': theme } });
  try {
    const workbench = await Workbench.open(browser, host, FILM, {
      viewport: { width: 1400, height: 900 },
    });
    await workbench.hideSideBar();
    await workbench.run('Lamella: Show the Shot Sheet beside the Plan');
    const shot = async () => {
      for (const frame of workbench.page.frames())
        if (
          await frame
            .locator('.shot')
            .count()
            .catch(() => 0)
        )
          return frame;
      return undefined;
    };
    await expect.poll(shot, { timeout: 30_000 }).toBeDefined();
    await workbench.focusText();
    await workbench.goTo('  bands-falling:', files[FILM]!);
    const current = (await shot())!.locator('.shot.current');
    await expect.poll(() => current.count(), { timeout: 30_000 }).toBe(1);
    // The drawings are what the picture is about.
    await current.locator('.drawings').evaluate((drawings) => drawings.scrollIntoView());
    await workbench.page.waitForTimeout(500);
    const file = path.join(PICTURES, `sheet-${name}.png`);
    await workbench.page.screenshot({ path: file, animations: 'disabled' });
  } finally {
    await browser.close();
    await host.stop();
  }
});
