/** The state of each shot over it in the real editor; a click shows the sheet at that shot. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ROOT } from './paths.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, Workbench } from './workbench.ts';

const WAIT = { timeout: 30_000, interval: 100 };
const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const sample = (name: string) => readFileSync(path.join(ROOT, 'samples', name), 'utf8');
const PLAN = sample(FILE);

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test('each shot has its state over it, and a click shows the sheet there', async () => {
  const host = await startWebHost(
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    { 'workbench.colorTheme': 'Default Light Modern' },
  );
  try {
    const workbench = await Workbench.open(browser, host, FILE, { width: 1500, height: 900 });
    await workbench.hideSideBar();
    const lenses = workbench.page.locator('.editor-instance .codelens-decoration a');
    // Of the three shots, those that the window shows.
    await expect.poll(() => lenses.count(), WAIT).toBe(2);
    const words = await lenses.allInnerTexts();
    for (const each of words) expect(each).toMatch(/^depth .* · mirror clear .* · 9 checks open$/);
    await workbench.picture('lenses');
    await lenses.nth(1).click();
    const shown = async () => {
      for (const frame of workbench.page.frames()) {
        const current = frame.locator('.shot.current');
        if ((await current.count().catch(() => 0)) > 0) return current.getAttribute('data-shot');
      }
      return null;
    };
    await expect.poll(shown, WAIT).toBe('first-black');
    await workbench.picture('lens clicked');
    await lenses.nth(0).click();
    await expect.poll(shown, WAIT).toBe('bands-falling');
    await workbench.close();
  } finally {
    await host.stop();
  }
});
