/** What a change does, against the last commit, in the real editor with its own source control. */
import { execFileSync } from 'node:child_process';
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { startNodeHost } from './node-host.ts';
import { sample, test, WAIT } from './opened.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const PLAN = sample(FILE);

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

function commitAll(folder: string): void {
  const author = ['-c', 'user.name=a', '-c', 'user.email=a@b'];
  const git = (...args: readonly string[]) =>
    execFileSync('git', ['-C', folder, ...author, ...args]);
  git('init', '-q', '-b', 'before-the-shoot');
  git('add', '.');
  git('commit', '-qm', 'Before');
}

test.for([
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
])('a changed plan against its last commit (%s)', async ([name, theme], { open }) => {
  const { workbench } = await open(
    startNodeHost,
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    {
      settings: {
        'workbench.colorTheme': theme,
        'git.enabled': true,
        'git.openRepositoryInParentFolders': 'never',
      },
      before: (folder) => commitAll(folder.path),
    },
  );
  await workbench.hideSideBar();
  await workbench.goTo('f/16', PLAN);
  for (let count = 0; count < 'f/16'.length; count++) await workbench.page.keyboard.press('Delete');
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
  for (let count = 0; count < 'f/22'.length; count++) await workbench.page.keyboard.press('Delete');
  await workbench.page.keyboard.type('f/32');
  await workbench.run('Lamella: Compare with the Last Commit');
  await expect.poll(() => shown.locator('body').textContent(), WAIT).toContain('f/32');
  const tabs = workbench.page.locator('.tab').filter({ hasText: 'since its last commit' });
  expect(await tabs.count()).toBe(1);
});
