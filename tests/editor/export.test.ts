/** The edit exported from the editor: the same bytes as on the command line, into the file named. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Host } from './host.ts';
import { startNodeHost } from './node-host.ts';
import { CLI, ROOT } from './paths.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, Workbench } from './workbench.ts';

const FILE = 'salt-garden.shootplan.yaml';
const PLAN = readFileSync(path.join(ROOT, 'samples', FILE), 'utf8');
const WAIT = { timeout: 30_000, interval: 100 };

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

/** What the command line makes of the same plan. */
function byCommand(format: 'otio' | 'csv'): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'lamella-export-'));
  try {
    writeFileSync(path.join(folder, FILE), PLAN);
    const args = [CLI, 'timeline', FILE, '--format', format];
    const made = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
    expect(made.status).toBe(0);
    return made.stdout;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

describe.each([
  ['extensions in a Node process', startNodeHost],
  ['extensions in a web worker', startWebHost],
])('%s', (_, startHost) => {
  let host: Host;
  let workbench: Workbench;

  beforeAll(async () => {
    host = await startHost({ [FILE]: PLAN });
    workbench = await Workbench.open(browser, host, FILE);
    await workbench.status.waitFor({ timeout: 30_000 });
  });
  afterAll(async () => {
    await workbench?.close();
    await host?.stop();
  });

  test.each(['otio', 'csv'] as const)('as .%s', async (format) => {
    await workbench.focusText();
    await workbench.run('Lamella: Export the Edit as a Timeline or Shot List');
    const named = workbench.page.locator('.quick-input-widget:visible input[type=text]').first();
    await expect.poll(() => named.inputValue(), WAIT).toMatch(/salt-garden\.otio$/);
    const target = (await named.inputValue()).replace(/otio$/, format);
    await named.fill(target);
    await workbench.page.keyboard.press('Enter');
    const read = () => {
      try {
        return host.folder.read(`salt-garden.${format}`);
      } catch {
        return '';
      }
    };
    await expect.poll(read, WAIT).toBe(byCommand(format));
  });
});
