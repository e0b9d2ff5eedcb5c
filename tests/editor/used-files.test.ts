/** A plan whose kit stands in another file: read from the disk, or through a web editor. */
import path from 'node:path';
import { expect } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import type { StartHost } from './host.ts';
import { startNodeHost } from './node-host.ts';
import { HOSTS, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';
import type { Workbench } from './workbench.ts';

/** The template in two files: its kit in one, the rest, which uses it, in the other. */
const inTwoFiles = (): Record<string, string> => {
  const text = planTemplate();
  const [from, to] = [text.indexOf('kit:\n'), text.indexOf('rigs:\n')];
  return {
    'crystal.shootplan.yaml': text
      .replace(text.slice(from, to), '')
      .replace('deliver:', 'use: [shared/our-kit.shootplan.yaml]\ndeliver:'),
    'shared/our-kit.shootplan.yaml': `shootplan: 1\n${text.slice(from, to)}`,
  };
};

const OTHER = 'winter/second.shootplan.yaml';

test.for(HOSTS)(
  'the kit of another file is read, and followed (%s)',
  async ([name, startHost], { open }) => {
    const files = {
      ...inTwoFiles(),
      [OTHER]: 'shootplan: 1\nuse: [../shared/our-kit.shootplan.yaml]\n',
    };
    // A terminal of elements, whose text can be read.
    const settings = { 'terminal.integrated.gpuAcceleration': 'off' };
    const { workbench } = await open(startHost, files, { settings });
    // Worked out from the lens, which stands in the other file.
    const works = async () => (await workbench.drawnLines()).join('\n');
    await expect.poll(works, WAIT).toContain('f/14 effective');
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
    await workbench.picture(`used kit, ${name}`);
    // The browser's folder of the tests can't rename.
    if (name === HOSTS[0]?.[0]) await renameFolder(workbench, name);
    // It saves before it runs.
    await workbench.run('Tasks: Run Test Task');
    const task = workbench.page.locator('.quick-input-widget:visible .monaco-list-row');
    await task.filter({ hasText: 'lamella: check' }).click();
    const terminal = workbench.page.locator('.xterm-rows');
    await expect
      .poll(async () => ((await terminal.textContent()) ?? '').replace(/\u00a0/g, ' '), WAIT)
      .toMatch(/3 files checked: .*1 of 1 shot clear/);
    await workbench.picture(`task, ${name}`);
  },
);

/** The open plan and the one that isn't open follow. */
async function renameFolder(workbench: Workbench, name: string): Promise<void> {
  const works = async () => (await workbench.drawnLines()).join('\n');
  await workbench.page.locator('.explorer-folders-view').getByText('shared').click();
  await workbench.page.keyboard.press('F2');
  const input = workbench.page.locator('.explorer-folders-view input');
  await input.fill('gear');
  await input.press('Enter');
  // The editor asks before anything is changed.
  await workbench.page.locator('.monaco-dialog-box').getByRole('button', { name: 'OK' }).click();
  await expect.poll(works, WAIT).toContain('use: [gear/our-kit.shootplan.yaml]');
  await expect.poll(works, WAIT).toContain('f/14 effective');
  await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
  await workbench.page.locator('.tab').filter({ hasText: 'second' }).click();
  await expect.poll(works, WAIT).toContain('use: [../gear/our-kit.shootplan.yaml]');
  await workbench.picture(`used kit, moved, ${name}`);
}

test('a kit that is not there is named', async ({ open }) => {
  const { workbench } = await open(startWebHost, {
    'crystal.shootplan.yaml': inTwoFiles()['crystal.shootplan.yaml']!,
  });
  const problems = async () => (await workbench.problems()).join('\n');
  await expect.poll(problems, WAIT).toContain('use-not-found');
});

/** Its folders `plans` and `gear` are two of one workspace. */
const inTwoFolders: StartHost = async (files, options) => {
  const host = await startNodeHost(files, options);
  const both = 'both.code-workspace';
  host.folder.write(both, JSON.stringify({ folders: [{ path: 'plans' }, { path: 'gear' }] }));
  return {
    ...host,
    address: (file) => {
      const address = new URL(host.address(file));
      address.searchParams.delete('folder');
      address.searchParams.set('workspace', path.join(host.folder.path, both));
      return address.href;
    },
  };
};

test('a kit in another folder of the workspace is read', async ({ open }) => {
  const [plan, kit] = Object.values(inTwoFiles());
  const { workbench } = await open(inTwoFolders, {
    'plans/crystal.shootplan.yaml': plan!.replace('shared/', '../gear/'),
    'gear/our-kit.shootplan.yaml': kit!,
  });
  await expect.poll(() => workbench.status.textContent(), WAIT).toContain('1 of 1 shot clear');
  await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
  await workbench.picture('kit in another folder of the workspace');
});
