/** The clips of a plan, verified from the command palette: on a disk, and where there is none. */
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { makeClip } from '../support/ffmpeg.ts';
import { startNodeHost } from './node-host.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, Workbench } from './workbench.ts';

const WAIT = { timeout: 30_000, interval: 100 };
const FILE = 'winter.shootplan.yaml';
const CLIP = 'small.mp4';
const PLAN = `${EXAMPLE_PLAN}\nclips:\n  frost:\n    - { file: ${CLIP} }\n`;
const COMMAND = 'Lamella: Verify the Clips of the Plan';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test('on a disk: a finding on the clip’s line until the plan is edited, and a page', async () => {
  const host = await startNodeHost({ [FILE]: PLAN });
  try {
    makeClip(path.join(host.folder.path, CLIP), { size: '640x360' });
    const workbench = await Workbench.open(browser, host, FILE);
    await workbench.hideSideBar();
    await workbench.goTo(CLIP, PLAN);
    await workbench.run(COMMAND);
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(1);
    const page = workbench.page.locator('.tab').filter({ hasText: 'and its clips' });
    await page.first().waitFor(WAIT);
    await workbench.picture('clips verified');
    await workbench.focusText();
    await workbench.goTo(CLIP, PLAN);
    await workbench.page.keyboard.type('a');
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
    await workbench.close();
  } finally {
    await host.stop();
  }
});

test('in the browser it says that it can’t, and where it can', async () => {
  const host = await startWebHost({ [FILE]: PLAN });
  try {
    const workbench = await Workbench.open(browser, host, FILE);
    await workbench.goTo(CLIP, PLAN);
    await workbench.run(COMMAND);
    const said = workbench.page.locator('.notification-toast').filter({
      hasText: 'Clips are read from a disk',
    });
    await said.first().waitFor(WAIT);
    await workbench.close();
  } finally {
    await host.stop();
  }
});
