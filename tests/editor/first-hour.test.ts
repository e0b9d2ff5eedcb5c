/** The first hour: a sample that is copied, a plan with a name, what the server is at, and no server. */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, inject } from 'vitest';
import { startNodeHost } from './node-host.ts';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'lantern.shootplan.yaml';
const FILES = { [FILE]: sample(FILE) };

test('a used file that is missing leaves no shot clear; a copied sample brings its kit', async ({
  open,
}) => {
  const { host, workbench } = await open(startWebHost, FILES);
  const { page } = workbench;
  await expect.poll(() => workbench.status.textContent(), WAIT).toMatch(/0 of \d+ shots clear/);
  await workbench.picture('states, used file missing');
  const rows = page.locator('.quick-input-widget:visible .monaco-list-row');
  const pick = async (label: string) => {
    await page.locator('.quick-input-widget:visible input[type=text]').first().fill(label);
    await rows.filter({ hasText: label }).first().click();
  };
  const openSample = async (name: string) => {
    await workbench.run('Lamella: Open a Sample');
    await pick(name);
    await rows.filter({ hasText: 'Another folder' }).waitFor();
    await workbench.picture('samples, where to');
    await rows.first().click();
    await page.locator('.tab.active').filter({ hasText: name }).waitFor();
  };
  const statusHas = async (words: string) => {
    await page.locator('#status\\.languageStatus').hover();
    const status = page.locator('.workbench-hover-container, .monaco-hover').filter({
      hasText: /Lamella \d+\.\d+\.\d+ is running/,
    });
    await expect.poll(() => status.first().textContent(), WAIT).toContain(words);
  };
  await openSample('tide-panes');
  await expect.poll(() => workbench.status.textContent(), WAIT).toMatch(/(\d+) of \1 shots clear/);
  expect(host.folder.read('tide-panes.shootplan.yaml')).toBe(sample('tide-panes.shootplan.yaml'));
  await statusHas('2 files read');
  await openSample('salt-garden');
  await statusHas('2027-03-02: 0 of 3 shots recorded');
  await workbench.picture('language status');
  await workbench.run('Welcome: Open Walkthrough...');
  await pick('Lamella');
  const steps = page.locator('.gettingStartedDetailsContent .getting-started-step');
  await expect.poll(() => steps.count(), WAIT).toBe(5);
  await workbench.picture('walkthrough');
});

test('a new plan has a name, and is a plan also after a reload', async ({ open }) => {
  const { workbench } = await open(startWebHost, FILES);
  const { page } = workbench;
  await expect.poll(() => workbench.status.count(), WAIT).toBe(1);
  await workbench.run('Lamella: New Shoot Plan from a Template');
  for (const step of ['1 of 3', '2 of 3', '3 of 3']) {
    await page.locator('.quick-input-widget:visible').filter({ hasText: step }).waitFor();
    await page.keyboard.press('Enter');
  }
  const tab = page.locator('.tab.active').filter({ hasText: 'new-plan.shootplan.yaml' });
  await tab.waitFor();
  await expect.poll(() => workbench.status.textContent(), WAIT).toContain('1 of 1 shot clear');
  // What is unsaved is kept a little later.
  await page.waitForTimeout(2_000);
  await page.reload();
  // The address names the other plan, which is in front again.
  await page.locator('.tab').filter({ hasText: 'new-plan' }).click({ timeout: 60_000 });
  await tab.waitFor();
  await expect.poll(() => workbench.language.textContent(), WAIT).toBe('Shoot Plan');
  await workbench.picture('new plan, after a reload');
});

const extensions = mkdtempSync(path.join(tmpdir(), 'lamella-broken-'));
afterAll(() => rmSync(extensions, { recursive: true, force: true }));

test('a server that dies while it starts is told once, with what to do', async ({ open }) => {
  cpSync(inject('extensions'), extensions, { recursive: true });
  const server = path.join(
    extensions,
    path.basename(inject('lamella')),
    'dist/lamella-language-server.cjs',
  );
  writeFileSync(server, 'setTimeout(() => process.exit(1), 50);\n');
  const { workbench } = await open(startNodeHost, FILES, { extensions });
  const told = workbench.page.locator('.notification-toast');
  await expect.poll(() => told.count(), WAIT).toBeGreaterThan(0);
  await workbench.page.waitForTimeout(3_000);
  expect(await told.count()).toBe(1);
  const words = (await told.first().textContent()) ?? '';
  expect(words).toMatch(/Restart/);
  expect(words).not.toMatch(/couldn't create|Pending response|Error:/i);
  await workbench.page.locator('#status\\.languageStatus').hover();
  const status = workbench.page.locator('.monaco-hover').filter({ hasText: 'Lamella has stopped' });
  await status.first().waitFor();
  await workbench.picture('server that dies at its start');
});
