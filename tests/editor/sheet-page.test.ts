/** The sheet as a file in a real browser: its colours, its labels, its widths. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { motionOf, violationsIn } from './axe.ts';
import { CLI, ROOT } from './paths.ts';
import { launchBrowser } from './workbench.ts';

const NAMES = ['tide-panes', 'lantern', 'slick', 'watch-movement', 'salt-garden', 'first-draft'];
const folder = mkdtempSync(path.join(tmpdir(), 'lamella-sheets-'));
const fileOf = (name: string): string => path.join(folder, `${name}.html`);

let browser: Browser;
beforeAll(async () => {
  for (const name of NAMES) {
    const plan = path.join('samples', `${name}.shootplan.yaml`);
    const { status, stderr } = spawnSync(
      process.execPath,
      [CLI, 'sheet', plan, '-o', fileOf(name)],
      { cwd: ROOT, encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([0, `The sheet was written to ${fileOf(name)}.\n`]);
  }
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

/** @param look what the page is seen with; its policy is left aside so that it can be measured */
async function open<T>(
  name: string,
  look: BrowserContextOptions,
  see: (page: Page) => Promise<T>,
): Promise<T> {
  const context = await browser.newContext({ bypassCSP: true, ...look });
  try {
    const page = await context.newPage();
    await page.goto(pathToFileURL(fileOf(name)).href);
    return await see(page);
  } finally {
    await context.close();
  }
}

describe.each(NAMES)('%s', (name) => {
  test.each([400, 620, 900, 1200])('breaks no measure in a tile at %i px', async (width) => {
    const broken = await open(name, { viewport: { width, height: 900 } }, (page) =>
      page.locator('.setting .value').evaluateAll((values) =>
        values.flatMap((value) => {
          // Of one word that holds together there is one line.
          if (/ /.test(value.textContent ?? '')) return [];
          const range = document.createRange();
          range.selectNodeContents(value);
          const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
          return lines.size > 1 ? [value.textContent] : [];
        }),
      ),
    );
    expect(broken).toEqual([]);
  });

  test.each(['light', 'dark'] as const)(
    'has nothing that axe finds, contrast included, and stands still (%s)',
    async (colorScheme) => {
      const found = await open(name, { colorScheme }, async (page) => [
        ...(await violationsIn(page)),
        ...(await motionOf(page)),
      ]);
      expect(found).toEqual([]);
    },
  );

  test('draws every label inside its drawing, and none over another', async () => {
    const faults = await open(name, {}, (page) =>
      page.evaluate(() => {
        const found: string[] = [];
        for (const svg of document.querySelectorAll<SVGSVGElement>('figure svg')) {
          const { width, height } = svg.viewBox.baseVal;
          const title = svg.querySelector('title')!.textContent;
          const boxes = [...svg.querySelectorAll('text')].map((text) => ({
            text: text.textContent,
            box: text.getBBox(),
          }));
          for (const [index, { text, box }] of boxes.entries()) {
            const isCut =
              box.x < -0.5 ||
              box.y < -0.5 ||
              box.x + box.width > width + 0.5 ||
              box.y + box.height > height + 0.5;
            if (isCut) found.push(`${title}: "${text}" is cut`);
            for (const other of boxes.slice(0, index)) {
              const across =
                Math.min(box.x + box.width, other.box.x + other.box.width) -
                Math.max(box.x, other.box.x);
              const down =
                Math.min(box.y + box.height, other.box.y + other.box.height) -
                Math.max(box.y, other.box.y);
              // Lines of type carry air above and below.
              if (across > 1 && down > 5) found.push(`${title}: "${text}" over "${other.text}"`);
            }
          }
        }
        return found;
      }),
    );
    expect(faults).toEqual([]);
  });

  test.each([320, 480, 800, 1400])('fits a window %i wide', async (width) => {
    const over = await open(name, { viewport: { width, height: 800 } }, (page) =>
      page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    );
    expect(over).toBeLessThanOrEqual(0);
  });

  test('asks for nothing but itself, and its own policy lets it look as it does', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const asked: string[] = [];
    const said: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => said.push(message.text()));
    const address = pathToFileURL(fileOf(name)).href;
    await page.goto(address);
    expect(asked).toEqual([address]);
    expect(said).toEqual([]);
    const weight = await page.locator('h1').evaluate((one) => getComputedStyle(one).fontSize);
    expect(weight).toBe('32px');
    await context.close();
  });
});

test('has nothing that axe finds with more contrast and in colours of the reader’s own', async () => {
  const found = await open('first-draft', { contrast: 'more' }, async (page) => {
    const before = await violationsIn(page);
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    await page.evaluate(() => document.body.append(document.createElement('button')));
    return [before, await violationsIn(page)] as const;
  });
  // Nothing but what was planted.
  expect(found).toEqual([[], [expect.stringMatching(/^button-name \(critical\)/)]]);
});
