/** The page that is filled in: the same sheet, with what its script needs, inert whatever a plan says. */
import { describe, expect, it } from 'vitest';
import { asWritten, isName, plain } from '../../client/fill/as-written.ts';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { pageStyle } from '../../shared/report/sheet/style.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { each } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { documentOf } from './support/sheets.ts';

const fill = { script: 'ours()', scriptHash: 'sha256-ours' };
const sheetOf = (text: string) => coreWith(text).sheet(PLAN, { isWrittenOn: true });
const sheet = sheetOf(EXAMPLE_PLAN);
const options = { say: new Say() };
const filled = sheetPage(sheet, { ...options, fill }, 'sha256-style');

describe('the page to fill in', () => {
  it('is without its script the sheet as it was', () => {
    const without = filled
      .replace(/<main data-fill="[^"]*">/, '<main>')
      .replace('script-src &#39;sha256-ours&#39;; ', '')
      .replace('<script>ours()</script>', '')
      .replace(pageStyle(true), () => pageStyle(false));
    expect(without).toBe(sheetPage(sheet, options, 'sha256-style'));
  });

  it('allows its one script by its hash, and nothing else', () => {
    const page = documentOf(filled);
    expect([...page.querySelectorAll('script')].map(({ textContent }) => textContent)).toEqual([
      'ours()',
    ]);
    expect(page.querySelector('meta[http-equiv]')!.getAttribute('content')).toBe(
      "default-src 'none'; style-src 'sha256-style'; script-src 'sha256-ours'; base-uri 'none'; form-action 'none'",
    );
  });

  it('tells the script the boxes in the order of the page', () => {
    const page = documentOf(filled);
    const data = JSON.parse(page.querySelector('main')!.dataset.fill!);
    expect(data.once).toHaveLength(page.querySelectorAll('.plan .checks input').length);
    const sections = [...page.querySelectorAll('.shot')];
    expect(data.shots.map(({ name }: { name: string }) => name)).toEqual(
      sections.map((section) => section.querySelector('h2')!.textContent),
    );
    for (const [index, section] of sections.entries()) {
      const { checks, states } = data.shots[index];
      expect(checks).toHaveLength(section.querySelectorAll('.checks input').length);
      expect(states).toHaveLength(checks.length + 1);
      const open = checks.filter(({ done }: { done: boolean }) => !done).length;
      expect(states[open]).toBe(section.querySelector('.state')!.textContent);
    }
    const boxes = [...page.querySelectorAll('.measurements .boxes')];
    expect(data.measurements).toHaveLength(boxes.length);
    // The last box of each is for remarks on paper.
    for (const [index, one] of boxes.entries())
      expect(data.measurements[index].boxes).toHaveLength(one.children.length - 1);
  });

  it('keeps what a hostile plan says as data', () => {
    const title = `"</script><script>alert(1)</script> ' \\u202e \\ud800"`;
    const { shots, ...rest } = sheetOf(changed(EXAMPLE_PLAN, { title }));
    const name = `"><img src=x onerror=alert(1)> \u202e\u2028 é`;
    const html = sheetPage(
      { ...rest, shots: [{ ...shots[0]!, name }] },
      { ...options, fill },
      'sha256-style',
    );
    const page = documentOf(html);
    expect(page.querySelectorAll('script')).toHaveLength(1);
    expect(page.querySelectorAll('img')).toHaveLength(0);
    const text = page.querySelector('main')!.dataset.fill!;
    expect(text).toMatch(/^[ -~]*$/);
    expect(JSON.parse(text).shots[0].name).toBe(name);
    expect(isName(name)).toBe(false);
  });

  it('has another mark when what is filled in has changed', () => {
    const markOf = (text: string): string =>
      JSON.parse(
        documentOf(sheetPage(sheetOf(text), { ...options, fill }, 'sha256-style')).querySelector(
          'main',
        )!.dataset.fill!,
      ).mark;
    expect(markOf(EXAMPLE_PLAN)).toBe(markOf(EXAMPLE_PLAN));
    expect(markOf(changed(EXAMPLE_PLAN, { 'shots/frost/iso': '50' }))).not.toBe(
      markOf(EXAMPLE_PLAN),
    );
  });
});

describe('what is typed in a hurry', () => {
  it.each([
    ['aperture', '11', 'f/11'],
    ['aperture', 'F 5,6', 'f/5.6'],
    ['aperture', 'wide open', null],
    ['iso', 'ISO 1600', '1600'],
    ['iso', 'auto', null],
    ['shutter', '1/50', '1/50 s'],
    ['shutter', '180 °', '180°'],
    ['shutter', '50', null],
    ['white-balance', '5600', '5600 K'],
    ['tilt', '6', '6°'],
    ['used', '40-52', '40 to 52 s'],
    ['used', '3,5 to 12 s', '3.5 to 12 s'],
    ['used', '52', null],
    ['marked', 'f8', 'f/8'],
    ['field', '118', null],
  ] as const)('as %s: %s', (key, typed, written) => {
    expect(asWritten(key, typed)).toBe(written);
  });

  it('loses no letter of any language, and nothing that acts', () => {
    each(['né 泡 🫧', 'a b'], (text) => expect(plain(text)).toBe(text));
    expect(plain('\u001b[2J\u202e\ud800x\n')).toBe('[2J  x');
  });
});
