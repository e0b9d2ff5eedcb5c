/**
 * `npm run pictures`: the README's pictures, made from the samples in the real editor. A picture
 * is looked at before it is committed; what must be in it is asserted all the same.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { PICTURES, ROOT } from './paths.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, Workbench } from './workbench.ts';

const FILE = 'first-draft.shootplan.yaml';
const PLAN = readFileSync(path.join(ROOT, 'samples', FILE), 'utf8');
/** The marked aperture of the shot that can be worked out; its hover is what is shown. */


const THEMES = { light: 'Default Light Modern', dark: 'Default Dark Modern' };

test.each(Object.entries(THEMES))(
  'a first draft with what is found in it, %s',
  async (name, theme) => {
    mkdirSync(PICTURES, { recursive: true });
    const browser = await launchBrowser();
    const host = await startWebHost({ [FILE]: PLAN }, { 'workbench.colorTheme': theme });
    try {
      const workbench = await Workbench.open(browser, host, FILE, { width: 1400, height: 900 });
      await workbench.goTo(APERTURE, PLAN);
      await workbench.squiggles('error').first().waitFor({ timeout: 30_000 });
      expect((await workbench.problems()).length).toBeGreaterThan(3);
      await workbench.hideSideBar();
      await workbench.focusText();
      expect(await workbench.hover()).toContain('f/');
      const file = path.join(PICTURES, `first-draft-${name}.png`);
      await workbench.page.screenshot({ path: file });
    } finally {
      await browser.close();
      await host.stop();
    }
  },
);
