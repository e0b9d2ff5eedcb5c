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
    const host = await startWebHost({ [FILE]: PLAN }, { ...BARE, 'workbench.colorTheme': theme });
    try {
      const workbench = await Workbench.open(browser, host, FILE, { width: 1200, height: 800 });
      await workbench.goTo(SHOWN, PLAN);
      await workbench.squiggles('error').first().waitFor({ timeout: 30_000 });
      expect((await workbench.problems()).length).toBeGreaterThan(3);
      await workbench.hideSideBar();
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
