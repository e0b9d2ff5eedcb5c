/** The sheet filled in on a phone: kept whatever happens to the page, and out again as one text. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { decode } from 'fast-png';
import jsQR from 'jsqr';
import type { BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CLI, ROOT } from './paths.ts';
import { launchKept } from './workbench.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'lamella-day-'));
/** A plan's file may be called anything that a disk takes. */
const PLAN = `tide <img src=x onerror=alert(1)> "%2F' panes.shootplan.yaml`;
const SHEET = path.join(folder, 'sheet.html');
const ADDRESS = pathToFileURL(SHEET).href;
const PHONE = {
  viewport: { width: 320, height: 640 },
  deviceScaleFactor: 3,
  hasTouch: true,
  isMobile: true,
} as const;

/** The same browser of the same person, as often as it is started. */
const start = (): Promise<BrowserContext> =>
  launchKept(path.join(folder, 'profile'), { ...PHONE, acceptDownloads: true });

let phone: BrowserContext;
beforeAll(async () => {
  const samples = path.join(ROOT, 'samples');
  copyFileSync(path.join(samples, 'tide-panes.shootplan.yaml'), path.join(folder, PLAN));
  for (const kit of ['workshop-kit.shootplan.yaml'])
    copyFileSync(path.join(samples, kit), path.join(folder, kit));
  const args = [CLI, 'sheet', PLAN, '-o', SHEET];
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
  expect([status, stderr]).toEqual([0, `The sheet was written to ${SHEET}.\n`]);
  phone = await start();
});
afterAll(async () => {
  await phone.close();
  rmSync(folder, { recursive: true, force: true });
});

async function opened(said: string[] = []): Promise<Page> {
  const page = await phone.newPage();
  page.setDefaultTimeout(10_000);
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', ({ message }) => said.push(message));
  page.on('request', (request) => {
    if (!/^(?:file|blob):/.test(request.url())) said.push(request.url());
  });
  await page.goto(ADDRESS);
  return page;
}

const shot = (page: Page, name: string): Locator => page.locator(`[id="shot.${name}"]`);
const takeButton = (page: Page, name: string): Locator => shot(page, name).locator('.timer .main');
const cardOf = (page: Page, name: string, take: number): Locator =>
  shot(page, name).locator('.takes > li', { hasText: `Take ${take}` });

async function madeTake(page: Page, name: string): Promise<void> {
  await takeButton(page, name).tap();
  await takeButton(page, name).tap();
}

/** By the button, as the file that the browser writes. */
async function savedDay(page: Page) {
  await page.locator('.fill-bar').getByRole('button', { name: 'Save' }).tap();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download' }).tap(),
  ]);
  const text = readFileSync(await download.path(), 'utf8');
  expect(await page.getByLabel('Text of the day').inputValue()).toBe(text);
  await codeHolds(page, text);
  await page.getByRole('button', { name: 'Close' }).tap();
  const [first, ...lines] = text.split('\n');
  expect(first).toBe('lamella day 1');
  return { text, name: download.suggestedFilename(), day: JSON.parse(lines.join('\n')) };
}

/** What another program reads from the code on the screen is the text, without its blanks. */
async function codeHolds(page: Page, text: string): Promise<void> {
  const code = page.locator('.fill-save svg.code');
  if ((await code.count()) === 0) {
    await page.getByText('too long for one QR code').waitFor();
    expect(JSON.stringify(JSON.parse(text.slice(text.indexOf('\n')))).length).toBeGreaterThan(1400);
    return;
  }
  const { width, height, data, channels } = decode(await code.screenshot());
  const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let at = 0; at < width * height; at++)
    for (let part = 0; part < 3; part++)
      pixels[4 * at + part] = data[channels * at + Math.min(part, channels - 1)]!;
  const read = jsQR(pixels, width, height)?.data ?? '';
  const [first, ...rest] = read.split('\n');
  expect(first).toBe('lamella day 1');
  const saved = expect.any(String);
  const day = JSON.parse(text.slice(text.indexOf('\n')));
  expect(JSON.parse(rest.join('\n'))).toEqual({ ...day, saved });
  // Two pixels a module: what a phone shows, another one can read.
  const box = (await code.boundingBox())!;
  const modules = Number((await code.getAttribute('viewBox'))!.split(' ')[2]);
  expect(box.width / modules).toBeGreaterThanOrEqual(2);
}

const OVER_UNDER = expect.stringMatching(/^[\d.]+ stops? (over|under)$/);
const OPEN_BEFORE = { before: [{ done: false }] };
const TIME = expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/);

test('a day is kept through a page that crashes and a browser that ends, and goes out whole', async () => {
  const said: string[] = [];
  let page = await opened(said);
  const fits = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(fits).toBe(320);
  await page.locator('.fill-bar').getByRole('button', { name: 'Save' }).tap();
  await page.getByLabel('Initials for checks').fill('op');
  await page.getByRole('button', { name: 'Close' }).tap();
  await page.locator('.plan .checks input').first().tap();
  await shot(page, 'swirl').locator('.checks input').nth(1).tap();
  await expect.poll(() => shot(page, 'swirl').locator('.state').textContent()).toContain('open');
  await madeTake(page, 'bands-falling');
  const first = cardOf(page, 'bands-falling', 1);
  await first.getByLabel('Clip file or number').fill('C0012.MP4');
  await first.getByRole('button', { name: 'Keep' }).tap();
  await takeButton(page, 'bands-falling').tap();

  // The page dies while take 2 runs.
  const crash = page.waitForEvent('crash');
  const session = await phone.newCDPSession(page);
  void session.send('Page.crash').catch(() => undefined);
  await crash;
  await page.close();
  page = await opened(said);
  expect(await takeButton(page, 'bands-falling').textContent()).toBe('Stop take 2');
  await takeButton(page, 'bands-falling').tap();
  const second = cardOf(page, 'bands-falling', 2);
  await second.getByRole('button', { name: 'C0013.MP4' }).tap();
  await second.getByRole('button', { name: 'Reject' }).tap();
  await second.getByLabel('Remark').fill('</script><b>burst</b> \u202e early');
  await second.getByText('Set differently').tap();
  await second.getByLabel('ISO').fill('iso 1600');
  await second.getByLabel('Aperture').fill('11');
  await second.getByLabel('Shutter').fill('slow');
  await second.getByLabel('Best part').fill('3-12,5');
  await page.locator('.boxes').getByLabel('Marked f-number').first().fill('F8');
  await page.locator('.boxes').getByLabel('Working distance').first().fill('118,5');
  await shot(page, 'bands-falling').getByLabel('Exposure found').fill('0,3 Under');
  await shot(page, 'swirl').getByLabel('Exposure found').fill('dark');
  expect(await shot(page, 'swirl').getByLabel('Exposure found').getAttribute('aria-invalid')).toBe(
    'true',
  );
  await shot(page, 'swirl').getByRole('button', { name: 'Start lifetime' }).tap();
  await page.waitForTimeout(150);
  await shot(page, 'swirl').getByRole('button', { name: 'Stop lifetime' }).tap();

  await phone.close();
  phone = await start();
  page = await opened(said);
  expect(await page.locator('.plan .checks input').first().isChecked()).toBe(true);
  expect(await shot(page, 'bands-falling').locator('.count').textContent()).toMatch(
    /^1 of \d+ kept$/,
  );
  await expect.poll(() => page.locator('.fill-bar .next').textContent()).toMatch(/^Next: /);
  const { text, day, name } = await savedDay(page);
  expect(name).toBe('tide-img-src-x-onerror-alert-1-2F-panes.day.txt');
  expect(day).toEqual({
    plan: PLAN,
    saved: TIME,
    planned: { 'bands-falling': expect.objectContaining({ aperture: expect.any(String) }) },
    checks: [
      { shot: null, check: 'card-and-battery', done: true, at: TIME, by: 'op', ...OPEN_BEFORE },
      {
        ...{ shot: 'swirl', check: 'record-setting-read-back', done: true, at: TIME, by: 'op' },
        ...OPEN_BEFORE,
      },
    ],
    takes: [
      {
        ...{ shot: 'bands-falling', take: 1, at: TIME, clip: 'C0012.MP4', keep: true, note: '' },
        seconds: expect.any(Number),
      },
      {
        ...{ shot: 'bands-falling', take: 2, at: TIME, clip: 'C0013.MP4', keep: false },
        note: '</script><b>burst</b>   early; shutter slow',
        ...{ set: { iso: '1600', aperture: 'f/11' }, used: '3 to 12.5 s' },
        seconds: expect.any(Number),
      },
    ],
    measurements: expect.any(Array),
    exposures: [
      {
        ...{ shot: 'bands-falling', at: TIME, found: '0.3 stops under', planned: OVER_UNDER },
        ...{ body: 'body-a', iso: expect.stringMatching(/^\d+$/), lights: expect.any(Array) },
      },
    ],
    lifetimes: [expect.objectContaining({ shot: 'swirl', at: TIME, seconds: expect.any(Number) })],
  });
  const given = { with: expect.any(Array), ring: expect.stringMatching(/^(closest|infinity)$/) };
  expect(day.measurements).toHaveLength(2);
  for (const row of [{ marked: 'f/8' }, { 'working-distance': '118.5 mm' }])
    expect(day.measurements).toContainEqual({
      lens: expect.any(String),
      row: { ...given, ...row },
    });
  expect(await page.locator('main b, main [onerror], main img:not([src^="data:"])').count()).toBe(
    0,
  );
  expect(said).toEqual([]);
  await page.close();

  // And into the plan: what the browser gave is what the command reads.
  writeFileSync(path.join(folder, 'day.txt'), text);
  const args = [CLI, 'bring-back', 'day.txt', PLAN];
  const { stdout, stderr } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
  expect(stdout).toMatch(/^\+ .*file: C0012\.MP4, take: 1, .*verdict: keep/m);
  const brought = stdout.split('\n').find((line) => /^\+ .*take: 2,/.test(line));
  for (const written of ['verdict: reject', 'used: 3 to 12.5 s', 'iso: 1600', 'aperture: f/11'])
    expect(brought).toContain(written);
  expect(stderr).toMatch(/^Take 2 of bands-falling: added\.$/m);
  // The lens stands in another file, where the row has to be added.
  expect(stderr.match(/^Measurement of .*: this file has no such lens/gm)).toHaveLength(2);

  // Saved again after a change of mind, it tells its own changes from those of the plan.
  spawnSync(process.execPath, [...args, '--write'], { cwd: folder });
  const file = path.join(folder, PLAN);
  const edited = readFileSync(file, 'utf8').replace('verdict: reject', 'verdict: maybe');
  writeFileSync(file, edited);
  page = await opened();
  await cardOf(page, 'bands-falling', 1).getByRole('button', { name: 'Reject' }).tap();
  writeFileSync(path.join(folder, 'day.txt'), (await savedDay(page)).text);
  await page.close();
  const again = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
  expect(again.stdout.match(/^[+-] .*$/gm)).toHaveLength(2);
  expect(again.stderr).toContain('`verdict` is reject instead of keep.\n');
  expect(again.stderr).toContain('`verdict` was changed to maybe in the plan;');
});

test('two tabs keep what the other one wrote', async () => {
  const [one, two] = [await opened(), await opened()];
  const [here, there] = [cardOf(one, 'swirl', 1), cardOf(two, 'swirl', 1)];
  await one.bringToFront();
  await madeTake(one, 'swirl');
  await here.getByLabel('Clip file or number').fill('A7');
  await two.bringToFront();
  await there.getByLabel('Remark').fill('from two');
  await there.getByRole('button', { name: 'Keep' }).tap();
  await madeTake(two, 'swirl');
  await one.bringToFront();
  await expect.poll(() => here.getByLabel('Remark').inputValue()).toBe('from two');
  const { day } = await savedDay(one);
  expect(day.takes.filter((take: { shot: string }) => take.shot === 'swirl')).toMatchObject([
    { take: 1, clip: 'A7', keep: true, note: 'from two' },
    { take: 2, keep: null },
  ]);
  await Promise.all([one.close(), two.close()]);
});

test('a spoiled entry and a full storage are told, and nothing goes', async () => {
  const page = await opened();
  await madeTake(page, 'first-black');
  await page.evaluate(() => {
    const key = Object.keys(localStorage).find((one) => one.endsWith('/take/first-black/1'))!;
    localStorage.setItem(key, '{"half');
  });
  await page.reload();
  const troubles = page.locator('.fill-troubles');
  expect(await troubles.textContent()).toContain('{"half');
  expect(await takeButton(page, 'first-black').textContent()).toBe('Start take 2');
  await page.evaluate(() => {
    for (let size = 2 ** 22; size >= 1; size = Math.floor(size / 2))
      for (let more = true; more; )
        try {
          localStorage.setItem(`filler-${size}-${Math.random()}`, 'x'.repeat(size));
        } catch {
          more = false;
        }
  });
  await madeTake(page, 'first-black');
  await cardOf(page, 'first-black', 2).getByLabel('Remark').fill('too much for it');
  expect(await troubles.textContent()).toContain('storage is full');
  expect((await savedDay(page)).text).toContain('too much for it');
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage))
      if (key.startsWith('filler-')) localStorage.removeItem(key);
  });
  await cardOf(page, 'first-black', 2).getByLabel('Remark').fill('and now');
  expect(await troubles.textContent()).not.toContain('storage is full');
  await page.reload();
  expect((await savedDay(page)).text).toContain('and now');
  // Longer than a code on this screen holds.
  await cardOf(page, 'first-black', 2).getByLabel('Remark').fill('x'.repeat(2000));
  expect((await savedDay(page)).text).toContain('xxx');
  expect(await page.locator('.fill-save svg.code').count()).toBe(0);
  await page.close();
});

test('its policy lets nothing run but its own script, and nothing moves by itself', async () => {
  const html = readFileSync(SHEET, 'utf8');
  const scripts = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, text]) => text!);
  expect(scripts).toHaveLength(1);
  const hash = createHash('sha256').update(scripts[0]!).digest('base64');
  expect(html).toContain(`script-src &#39;sha256-${hash}&#39;;`);
  const page = await opened();
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const found = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.title = "ran"';
    document.body.append(script);
    const all = [...document.querySelectorAll('*')];
    return {
      ran: document.title === 'ran',
      handlers: all.flatMap((one) => [...one.attributes]).filter(({ name }) => /^on/.test(name))
        .length,
      moving: all.filter((one) => {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(one);
        return transitionDuration !== '0s' || animationName !== 'none' || scrollBehavior !== 'auto';
      }).length,
    };
  });
  expect(found).toEqual({ ran: false, handlers: 0, moving: 0 });
  await page.close();
});
