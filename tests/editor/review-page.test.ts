/** Comments on a comparison in a real browser: kept, taken out as one text, and brought into the plan. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { motionOf, violationsIn } from './axe.ts';
import { CLI, ROOT } from './paths.ts';
import { launchBrowser, launchKept } from './workbench.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'lamella-review-'));
/** A plan's file may be called anything that a disk takes. */
const PLAN = `tide <img src=x onerror=alert(1)> "%2F' panes.shootplan.yaml`;
const OLD = 'old.shootplan.yaml';
const ADDRESS = pathToFileURL(path.join(folder, 'changes.html')).href;
const NARROW = { viewport: { width: 400, height: 800 } } as const;

const run = (...args: string[]) =>
  spawnSync(process.execPath, [CLI, ...args], { cwd: folder, encoding: 'utf8' });

const start = (): Promise<BrowserContext> =>
  launchKept(path.join(folder, 'profile'), { ...NARROW, acceptDownloads: true });

let browser: BrowserContext;
beforeAll(async () => {
  const samples = path.join(ROOT, 'samples');
  for (const [from, to] of [
    ['tide-panes.shootplan.yaml', OLD],
    ['workshop-kit.shootplan.yaml', 'workshop-kit.shootplan.yaml'],
  ] as const)
    copyFileSync(path.join(samples, from), path.join(folder, to));
  const old = readFileSync(path.join(folder, OLD), 'utf8');
  writeFileSync(path.join(folder, PLAN), old.replace('aperture: f/16', 'aperture: f/11'));
  const { status, stderr } = run('compare', OLD, PLAN, '--format', 'html', '-o', 'changes.html');
  expect([status, stderr]).toEqual([0, 'The comparison was written to changes.html.\n']);
  browser = await start();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

async function opened(said: string[]): Promise<Page> {
  const page = await browser.newPage();
  page.setDefaultTimeout(10_000);
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', ({ message }) => said.push(message));
  page.on('request', (request) => {
    if (!/^(?:file|blob|data):/.test(request.url())) said.push(request.url());
  });
  await page.goto(ADDRESS);
  return page;
}

/** Begins a comment on a shot and writes it. */
async function comment(page: Page, shot: string, says: string): Promise<void> {
  await page.getByRole('button', { name: `Comment on ${shot}` }).click();
  await page.locator(`[data-shot="${shot}"] textarea`).last().fill(says);
}

const written = (page: Page): Promise<string[]> =>
  page
    .locator('.review textarea')
    .evaluateAll((all) => all.map((one) => (one as HTMLTextAreaElement).value));

test('comments are kept when the browser ends, go out as one text and come into the plan once', async () => {
  const said: string[] = [];
  let page = await opened(said);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(400);
  await comment(page, 'bands-falling', 'Brighter?\n</script><b>A third</b> \u202e of a stop.');
  await comment(page, 'swirl', 'Good: "as it is" # really');
  await comment(page, 'swirl', 'not this');
  await comment(page, 'first-black', '');
  const removal = page.locator('[data-shot="swirl"] li').last().getByRole('button');
  await removal.click();
  await removal.click();

  await browser.close();
  browser = await start();
  page = await opened(said);
  expect(await written(page)).toEqual([
    'Brighter?\n</script><b>A third</b> \u202e of a stop.',
    '',
    'Good: "as it is" # really',
  ]);
  expect(await page.locator('.fill-bar strong').textContent()).toBe('2 comments');

  await page.locator('.fill-bar').getByRole('button', { name: 'Save' }).click();
  await page.getByLabel('Your name or initials').fill('rv');
  await page.getByText('Save the review').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('tide-img-src-x-onerror-alert-1-2F-panes.review.txt');
  const text = readFileSync(await download.path(), 'utf8');
  expect(await page.getByLabel('Text of the review').inputValue()).toBe(text);
  expect(said).toEqual([]);
  await page.close();

  writeFileSync(path.join(folder, 'review.txt'), text);
  const before = readFileSync(path.join(folder, PLAN), 'utf8');
  const brought = run('bring-back', 'review.txt', PLAN, '--write');
  expect([brought.status, brought.stderr.split('\n').slice(0, 2)]).toEqual([
    0,
    ['A comment by rv on bands-falling: added.', 'A comment by rv on swirl: added.'],
  ]);
  const after = readFileSync(path.join(folder, PLAN), 'utf8');
  const added = after.split('\n').filter((line) => !before.split('\n').includes(line));
  const TIME = String.raw`\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z`;
  expect(added).toEqual([
    '    review:',
    expect.stringMatching(
      new RegExp(
        `^ {6}- \\{ by: rv, time: ${TIME}, says: "Brighter\\?\\\\n</script><b>A third</b> {3}of a stop\\." \\}$`,
      ),
    ),
    '    review:',
    expect.stringMatching(new RegExp(`^ {6}- \\{ by: rv, time: ${TIME}, says: .*really.* \\}$`)),
  ]);
  const rest = after.split('\n').filter((line) => !added.includes(line));
  expect(rest).toEqual(before.split('\n'));
  expect(run('bring-back', 'review.txt', PLAN).stderr).toBe('Nothing to bring back.\n');
  expect(run('check', PLAN).stdout).toContain('rv comments: Brighter?');
});

/** The page as it is seen with these options. */
async function seen<T>(
  options: BrowserContextOptions,
  see: (page: Page) => Promise<T>,
): Promise<T> {
  const fresh = await launchBrowser();
  try {
    const page = await (await fresh.newContext(options)).newPage();
    await page.goto(ADDRESS);
    return await see(page);
  } finally {
    await fresh.close();
  }
}

test.each(['light', 'dark'] as const)(
  'has nothing that axe finds, contrast included, and stands still (%s)',
  async (colorScheme) => {
    const violations = await seen({ bypassCSP: true, colorScheme }, async (page) => {
      await comment(page, 'swirl', 'Good.');
      return [...(await violationsIn(page)), ...(await motionOf(page))];
    });
    expect(violations).toEqual([]);
  },
);

test('without scripts it is a page to read', async () => {
  const counts = await seen({ javaScriptEnabled: false, ...NARROW }, async (page) => [
    await page.locator('.frames img').count(),
    await page.locator('button, textarea, .fill-bar').count(),
  ]);
  expect(counts).toEqual([2, 0]);
});
