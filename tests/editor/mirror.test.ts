/**
 * A film in the real editor: its colours beside its thickness, what the mirror asks of the tilt,
 * and a fix that says what it costs; light and dark.
 */
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
/** The first shot of the sample, hardly tilted at all. */
const PLAN = sample(FILE).replace('tilt: 6 deg', 'tilt: 2 deg');

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test.each([
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
])('a film shows its colours and what its tilt lacks (%s)', async (name, theme) => {
  const host = await startWebHost(
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    { 'workbench.colorTheme': theme },
  );
  try {
    const workbench = await Workbench.open(browser, host, FILE);
    await workbench.goTo('80 to 900 nm', PLAN);
    const swatches = workbench.page.locator('.editor-instance .colorpicker-color-decoration');
    await expect.poll(() => swatches.count(), WAIT).toBe(2);
    const colours = await swatches.evaluateAll((each) =>
      each.map((one) => getComputedStyle(one).backgroundColor),
    );
    expect(new Set(colours).size).toBe(2);
    expect(await workbench.hover()).toContain('order 1');
    await workbench.picture(`film colours, ${name}`);
    await workbench.escape();
    await workbench.goTo('2 deg', PLAN);
    await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBe(1);
    const hover = await workbench.hover();
    expect(hover).toContain('least tilt');
    expect(hover).toContain('window');
    await workbench.picture(`tilt, ${name}`);
    const problems = await workbench.problems();
    expect(problems.filter((row) => row.includes('lamella'))).toHaveLength(1);
    await workbench.focusText();
    await workbench.goTo('2 deg', PLAN);
    await workbench.escape();
    await workbench.applyFix('Tilt ');
    await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBe(0);
    await workbench.close();
  } finally {
    await host.stop();
  }
});
