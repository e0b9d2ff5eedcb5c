/** The sheet on a phone propped beside the rig: by night, 320 px wide, for a thumb and at arm's length. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { motionOf, violationsIn } from './axe.ts';
import { CLI, ROOT } from './paths.ts';
import { launchBrowser } from './workbench.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'lamella-phone-'));
const SHEET = path.join(folder, 'sheet.html');
/** The policy is left aside so that the page can be measured. */
const PHONE = {
  viewport: { width: 320, height: 640 },
  hasTouch: true,
  isMobile: true,
  colorScheme: 'dark',
  bypassCSP: true,
} as const;

let browser: Browser;
beforeAll(async () => {
  const args = [CLI, 'sheet', 'samples/tide-panes.shootplan.yaml', '-o', SHEET];
  expect(spawnSync(process.execPath, args, { cwd: ROOT }).status).toBe(0);
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

/** CSS px of a target that a thumb hits (WCAG 2.2, 2.5.5). */
const THUMB = 44;
/** CSS px of what is read: a body text of 16 px is the least; numbers are seen from an arm's length. */
const [LEAST_TYPE, LEAST_VALUE, LEAST_CLOCK] = [16, 32, 40];

/** What is smaller than it may be, of what stands on the page now. */
const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(
    ([thumb, type, value, clock]) => {
      const found: string[] = [];
      const isShown = (one: Element) => one.checkVisibility() && one.getClientRects().length > 0;
      const note = (one: Element, what: string) =>
        found.push(`${what}: ${one.outerHTML.slice(0, 80)}`);
      for (const one of document.querySelectorAll('a, button, input, summary, textarea')) {
        if (!isShown(one)) continue;
        // A tap anywhere in its label, or in the box drawn around it, counts.
        const target = one.closest('label, .boxes dd') ?? one;
        const { width, height } = target.getBoundingClientRect();
        if (width < thumb || height < thumb) note(one, `${width} by ${height}`);
      }
      const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = words.nextNode(); node; node = words.nextNode()) {
        const one = node.parentElement!;
        if (!node.textContent?.trim() || one.closest('svg, script, style') || !isShown(one))
          continue;
        const size = Number.parseFloat(getComputedStyle(one).fontSize);
        const isNumber = one.matches('.value:not(.long, .none)');
        const least = isNumber ? value : one.matches('.timer:not(.life) .clock') ? clock : type;
        if (size < least) note(one, `${size} px`);
      }
      return found;
    },
    [THUMB, LEAST_TYPE, LEAST_VALUE, LEAST_CLOCK] as const,
  );

test('everything on the page is large enough for a thumb, and to be read at arm’s length', async () => {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  await page.goto(pathToFileURL(SHEET).href);
  const shot = page.locator('[id="shot.swirl"]');
  const start = shot.locator('.timer .main');
  await start.tap();
  expect(await tooSmall(page)).toEqual([]);
  await start.tap();
  await shot.getByText('Set differently').tap();
  await shot.locator('.checks input').first().tap();
  expect(await tooSmall(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);

  expect(await violationsIn(page)).toEqual([]);
  expect(await motionOf(page)).toEqual([]);

  await page.locator('.fill-bar').getByRole('button', { name: 'Save' }).tap();
  await page.locator('svg.code').waitFor();
  expect(await tooSmall(page)).toEqual([]);
  await context.close();
});
