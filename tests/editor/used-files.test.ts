/** A plan whose kit stands in another file: read from the disk, or through a web editor. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { startNodeHost } from './node-host.ts';
import { startWebHost } from './web-host.ts';
import { launchBrowser, Workbench } from './workbench.ts';

const WAIT = { timeout: 30_000, interval: 100 };

/** The template in two files: its kit in one, the rest, which uses it, in the other. */
const inTwoFiles = (): Record<string, string> => {
  const text = planTemplate();
  const [from, to] = [text.indexOf('kit:\n'), text.indexOf('rigs:\n')];
  return {
    'shared/our-kit.shootplan.yaml': `shootplan: 1\n${text.slice(from, to)}`,
    'crystal.shootplan.yaml': text
      .replace(text.slice(from, to), '')
      .replace('deliver:', 'use: [shared/our-kit.shootplan.yaml]\ndeliver:'),
  };
};

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

test.each([
  ['extensions in a Node process', startNodeHost],
  ['extensions in a web worker', startWebHost],
])('the kit of another file is read (%s)', async (name, startHost) => {
  const host = await startHost(inTwoFiles());
  try {
    const workbench = await Workbench.open(browser, host, 'crystal.shootplan.yaml');
    // Worked out from the lens, which stands in the other file.
    const works = async () => (await workbench.drawnLines()).join('\n');
    await expect.poll(works, WAIT).toContain('works as f/14');
    expect(await workbench.squiggles('error').count()).toBe(0);
    await workbench.picture(`used kit, ${name}`);
    await workbench.close();
  } finally {
    await host.stop();
  }
});

test('a kit that is not there is named', async () => {
  const host = await startWebHost({
    'crystal.shootplan.yaml': inTwoFiles()['crystal.shootplan.yaml']!,
  });
  try {
    const workbench = await Workbench.open(browser, host, 'crystal.shootplan.yaml');
    const problems = async () => (await workbench.problems()).join('\n');
    await expect.poll(problems, WAIT).toContain('use-not-found');
    await workbench.close();
  } finally {
    await host.stop();
  }
});
