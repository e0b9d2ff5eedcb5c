/** The sheet on paper, as the browser prints it: one page a shot, and none with next to nothing on it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { inflateSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CLI, ROOT } from './paths.ts';
import { launchBrowser } from './workbench.ts';

const SUFFIX = '.shootplan.yaml';
const NAMES = readdirSync(path.join(ROOT, 'samples'))
  .filter((name) => name.endsWith(SUFFIX) && name !== `workshop-kit${SUFFIX}`)
  .map((name) => name.slice(0, -SUFFIX.length));
const folder = mkdtempSync(path.join(tmpdir(), 'lamella-print-'));

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Strings that each page of a PDF shows (ISO 32000-1, 7.7.3.3 and 9.4.3). */
function stringsByPage(pdf: Buffer): number[] {
  const text = pdf.toString('latin1');
  const objects = new Map(
    [...text.matchAll(/^(\d+) 0 obj\b([\s\S]*?)^endobj/gm)].map(([, id, body]) => [id!, body!]),
  );
  const pages = [...objects.values()].filter((body) => /\/Type\s*\/Page\b(?!s)/.test(body));
  return pages.map((page) => {
    const content = objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? '') ?? '';
    const packed = /stream\r?\n([\s\S]*)\nendstream/.exec(content)?.[1] ?? '';
    const drawn = inflateSync(Buffer.from(packed, 'latin1')).toString('latin1');
    return drawn.match(/\bT[jJ]\b/g)?.length ?? 0;
  });
}

/** In mm: ISO 216 and ANSI Y14.1. */
const PAPERS = [
  ['A4', 210, 297],
  ['Letter', 215.9, 279.4],
] as const;
/** Left and right, top and bottom, mm. */
const [BESIDE, ABOVE] = [18, 16];

describe.each(NAMES)('%s', (name) => {
  test('prints one page a shot at most', async () => {
    const file = path.join(folder, `${name}.html`);
    const args = [CLI, 'sheet', path.join('samples', name + SUFFIX), '-o', file];
    expect(spawnSync(process.execPath, args, { cwd: ROOT }).status).toBe(0);
    const page = await browser.newPage();
    await page.goto(pathToFileURL(file).href);
    await page.emulateMedia({ media: 'print' });
    for (const [format, widthMm, heightMm] of PAPERS) {
      const perMm = 96 / 25.4;
      const size = [(widthMm - BESIDE) * perMm, (heightMm - ABOVE) * perMm] as const;
      await page.setViewportSize({ width: Math.floor(size[0]), height: Math.floor(size[1]) });
      const seen = await page.evaluate(([width, height]) => {
        const heightOf = (one: Element) => one.getBoundingClientRect().height / height;
        const places = '.setting, figure, tr, li, .bench, h2, h3';
        return {
          head: Math.ceil(heightOf(document.querySelector('.plan')!)),
          shots: document.querySelectorAll('.shot').length,
          measurements: Math.ceil(
            [...document.querySelectorAll('.measurements')].reduce(
              (sum, one) => sum + heightOf(one),
              0,
            ),
          ),
          over: [...document.querySelectorAll(places)]
            .filter((one) => one.getBoundingClientRect().right > width + 1 || heightOf(one) > 1)
            .map((one) => one.outerHTML.slice(0, 80)),
          high: [...document.querySelectorAll('.shot')]
            .filter((one) => heightOf(one) > 1)
            .map(({ id }) => id),
          // No label is so small that it can't be read at all: 4 pt.
          small: [...document.querySelectorAll<SVGSVGElement>('.shot figure svg')].filter(
            (svg) => (svg.getScreenCTM()?.a ?? 0) * 12 < 4 * (96 / 72) - 0.05,
          ).length,
          rows: [...document.querySelectorAll('.shot')].map(
            (shot) => shot.querySelectorAll('.log tbody tr').length,
          ),
        };
      }, size);
      expect([seen.over, seen.high, seen.small], format).toEqual([[], [], 0]);
      for (const rows of seen.rows) expect(rows).toBeGreaterThan(0);
      const pages = stringsByPage(await page.pdf({ format }));
      expect(pages.length, format).toBe(seen.head + seen.shots + seen.measurements);
      // A line of words is one to three strings.
      for (const strings of pages) expect(strings).toBeGreaterThan(8);
    }
    await page.close();
  });
});
