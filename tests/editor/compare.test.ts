/** What a change does, against the last commit, in the real editor with its own source control. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Frame, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startNodeHost } from './node-host.ts';
import { ROOT } from './paths.ts';
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

/** The frame of the rendered comparison. */
async function comparisonIn(page: Page): Promise<Frame> {
  let found: Frame | undefined;
  await expect
    .poll(async () => {
      for (const frame of page.frames()) {
        const text = await frame
          .locator('body.vscode-body')
          .allInnerTexts()
          .catch(() => []);
        if (text.join('').includes('bands-falling')) found = frame;
      }
      return found !== undefined;
    }, WAIT)
    .toBe(true);
  return found!;
}

test.each([
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
])('a changed plan against its last commit (%s)', async (name, theme) => {
  const host = await startNodeHost(
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    {
      'workbench.colorTheme': theme,
      'git.enabled': true,
      'git.openRepositoryInParentFolders': 'never',
    },
  );
  const git = (...args: readonly string[]) =>
    execFileSync('git', [
      '-C',
      host.folder.path,
      '-c',
      'user.name=a',
      '-c',
      'user.email=a@b',
      ...args,
    ]);
  try {
    git('init', '-q', '-b', 'before-the-shoot');
    git('add', '.');
    git('commit', '-qm', 'Before');
    const workbench = await Workbench.open(browser, host, FILE);
    await workbench.hideSideBar();
    await workbench.goTo('f/16', PLAN);
    for (let count = 0; count < 'f/16'.length; count++)
      await workbench.page.keyboard.press('Delete');
    await workbench.page.keyboard.type('f/22');
    // The repository is found some time after the folder is opened; its branch stands below then.
    await workbench.page
      .locator('.statusbar-item')
      .filter({ hasText: /before-the-shoot/ })
      .first()
      .waitFor(WAIT);
    await workbench.run('Lamella: Compare with the Last Commit');
    const shown = await comparisonIn(workbench.page);
    const words = ((await shown.locator('body').textContent()) ?? '').replace(/\s+/g, ' ');
    expect(words).toContain('f/16');
    expect(words).toContain('f/22');
    await workbench.picture(`comparison, ${name}`);

    // Asked for again it is the same page, with what the plan says now.
    await workbench.focusText();
    await workbench.goTo('f/16', PLAN);
    for (let count = 0; count < 'f/22'.length; count++)
      await workbench.page.keyboard.press('Delete');
    await workbench.page.keyboard.type('f/32');
    await workbench.run('Lamella: Compare with the Last Commit');
    await expect.poll(() => shown.locator('body').textContent(), WAIT).toContain('f/32');
    const tabs = workbench.page.locator('.tab').filter({ hasText: 'since its last commit' });
    expect(await tabs.count()).toBe(1);
    await workbench.close();
  } finally {
    await host.stop();
  }
});
