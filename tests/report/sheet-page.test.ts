/** The page: whole in itself, readable by machine and by screen reader, inert whatever a plan says. */
import axe from 'axe-core';
import fc from 'fast-check';
import { JSDOM } from 'jsdom';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { SHEET_STYLE } from '../../shared/report/sheet/style.ts';
import { stateWords } from '../../shared/report/sheet/words.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { laws } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import {
  documentOf,
  pageOf,
  STYLE_HASH,
  sampleCore,
  samples,
  sectionOf,
} from './support/sheets.ts';

const say = new Say();

describe('the sheet of every sample', () =>
  laws(
    samples,
    ([name]) => name,
    ([_, text], law) => {
      const html = pageOf(sampleCore(text));
      const page = documentOf(html);

      law('needs nothing from outside, and its policy allows nothing but its own style', () => {
        expect(
          page.querySelectorAll(
            'script, link, img, iframe, object, embed, form, a:not([href^="#"])',
          ),
        ).toHaveLength(0);
        const attributes = [...page.querySelectorAll('*')].flatMap((one) => [...one.attributes]);
        expect(
          attributes.filter(
            ({ name, value }) =>
              /^on|^(style|src|href|xlink:href|action)$/.test(name) && !value.startsWith('#'),
          ),
        ).toEqual([]);
        expect([...SHEET_STYLE.matchAll(/url\(([^)]*)\)|@import/g)].map(([, to]) => to)).toEqual([
          '#hatched',
          '#crossed',
        ]);
        const policy = page.querySelector('meta[http-equiv="Content-Security-Policy"]')!;
        expect(policy.getAttribute('content')).toBe(
          `default-src 'none'; style-src '${STYLE_HASH}'; base-uri 'none'; form-action 'none'`,
        );
        expect(page.querySelector('style')!.textContent).toBe(SHEET_STYLE);
      });

      law('has no id twice, and what refers to one finds it', () => {
        const ids = [...page.querySelectorAll('[id]')].map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        const referred = [
          ...page.querySelectorAll('[aria-labelledby], [aria-describedby]'),
        ].flatMap((one) =>
          ['aria-labelledby', 'aria-describedby'].flatMap((name) => one.getAttribute(name) ?? []),
        );
        for (const id of referred) expect(ids).toContain(id);
      });

      law('names and describes every drawing, with its words beside it', () => {
        for (const svg of page.querySelectorAll('figure svg')) {
          expect(svg.getAttribute('role')).toBe('img');
          expect(svg.querySelector('title')!.textContent).not.toBe('');
          const described = page.getElementById(svg.getAttribute('aria-describedby')!);
          expect(described!.textContent).toMatch(/\w.*\.$/);
          expect(svg.closest('figure')!.querySelector('figcaption')!.textContent).toMatch(/\w/);
        }
      });

      law('keeps every label inside its drawing', () => {
        for (const label of page.querySelectorAll('figure svg text')) {
          const [, , width, height] = label
            .closest('svg')!
            .getAttribute('viewBox')!
            .split(' ')
            .map(Number);
          const [x, y] = [Number(label.getAttribute('x')), Number(label.getAttribute('y'))];
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(width!);
          expect(y).toBeGreaterThan(8);
          expect(y, label.textContent ?? '').toBeLessThan(height!);
        }
      });

      law('has nothing that axe finds', async () => {
        const { window } = new JSDOM(html, { runScripts: 'outside-only' });
        // What a picture is made of is none of a reader's: its title and words are.
        for (const shape of window.document.querySelectorAll('svg > :not(title, desc)'))
          shape.remove();
        window.eval(axe.source);
        const { violations, passes } = await (window as unknown as { axe: typeof axe }).axe.run(
          window.document.documentElement,
          // What colours come out as is measured in a browser: nothing is laid out here.
          { rules: { 'color-contrast': { enabled: false } }, resultTypes: ['violations'] },
        );
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
        expect(passes.length).toBeGreaterThan(10);
      });
    },
  ));

describe('every setting is the one of the plan', () => {
  const { page } = {
    page: documentOf(pageOf(sampleCore(samples.find(([n]) => n.startsWith('tide'))![1]))),
  };
  const tiles = Object.fromEntries(
    [...sectionOf(page, 'bands-falling').querySelectorAll('.setting')].map((tile) => [
      tile.querySelector('dt')!.textContent,
      [...tile.querySelectorAll('dd')].map(({ textContent }) =>
        textContent?.replaceAll('\u00a0', ' '),
      ),
    ]),
  );

  it('as written, with what it comes to', () => {
    expect(tiles).toMatchObject({
      Aperture: [
        'f/16',
        expect.stringMatching(/^f\/26 effective \(\d+ to 26\), camera displays f\/16$/),
      ],
      Shutter: ['1/50 s', '360°'],
      'White balance': ['5600 K'],
      Recording: ['50 fps', '1920 × 1080, full-50'],
      Tilt: ['6°', 'film leans back'],
      Takes: ['4 × 60 s', 'wait 6 s before each'],
    });
  });
});

const HOSTILE = {
  title: '"<script>alert(1)</script> \\u202Eeltit"',
  about:
    '"\\u001b[31mred\\u001b]0;x\\u0007 ![x](http://x.example/p.png) <img src=x onerror=alert(1)>"',
  'shots/frost/about':
    '"</title></style><svg onload=alert(1)> | a | b |\\n# heading [link](javascript:1)"',
  'shots/skin/about': '"\\u2066isolated \\u200f {{x}} &lt;b&gt; `code` **bold** https://x.example"',
  'lights/strip/about': '"<b>"',
} as const;

describe('what a hostile plan says', () => {
  const core = coreWith(changed(EXAMPLE_PLAN, HOSTILE));
  const html = pageOf(core);
  const markdown = markdownText(sheetDocument(core.sheet(PLAN), say));
  // Tabs and line breaks may stand in a page; nothing else that acts.
  const ACTIVE = /(?![\t\n])[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

  it('is read: the plan is sound', () => {
    expect(core.findings(PLAN).filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('stands in the page as text and nothing else', () => {
    const page = documentOf(html);
    const kinds = new Set(
      [...page.querySelectorAll('*')].map(({ tagName }) => tagName.toLowerCase()),
    );
    for (const tag of ['script', 'img', 'b', 'link', 'iframe']) expect(kinds).not.toContain(tag);
    expect(
      [...page.querySelectorAll('*')]
        .flatMap((one) => [...one.attributes])
        .filter(({ name }) => name.startsWith('on')),
    ).toEqual([]);
    expect(page.querySelector('h1')!.textContent).toBe('<script>alert(1)</script> \\u{202e}eltit');
    expect(page.querySelectorAll('style')).toHaveLength(1);
    expect(sectionOf(page, 'frost').querySelector('p:not(.state)')!.textContent).toContain(
      '<svg onload=alert(1)>',
    );
    expect(html).not.toMatch(ACTIVE);
  });

  it('stands in Markdown as text and nothing else, by another reader of it', () => {
    expect(markdown).not.toMatch(ACTIVE);
    const page = documentOf(new MarkdownIt({ html: true, linkify: true }).render(markdown));
    expect(page.querySelectorAll('script, img, a, svg, b')).toHaveLength(0);
    // What is code are keys that the sheet's own words name, and nothing that the plan says.
    for (const { textContent } of page.querySelectorAll('code'))
      expect(Object.values(HOSTILE).join()).not.toContain(`\`${textContent}\``);
    expect(page.querySelector('h1')!.textContent).toContain('<script>alert(1)</script>');
    const headings = [...page.querySelectorAll('h1, h2')].map(({ textContent }) => textContent);
    expect(headings).toEqual([
      expect.stringContaining('eltit'),
      'Order of shots',
      'Cards and batteries',
      'Checks for the day',
      'frost',
      'skin',
    ]);
  });
});

describe('whatever a plan is', () => {
  it('its sheet says no number that is none, and is a page', () => {
    fc.assert(
      fc.property(randomPlan(), ({ text }) => {
        const core = coreWith(text);
        const html = pageOf(core);
        expect(html).not.toMatch(/NaN|Infinity|undefined|\[object|null/);
        expect(markdownText(sheetDocument(core.sheet(PLAN), say))).not.toMatch(
          /NaN|Infinity|undefined|\[object/,
        );
        expect(documentOf(html).querySelectorAll('.shot')).toHaveLength(
          core.sheet(PLAN).shots.length,
        );
      }),
      { numRuns: 40 },
    );
  });

  it.each([
    ['nothing at all', ''],
    ['no shots', 'shootplan: 1\ntitle: Nothing yet\n'],
    ['a shot of nothing', 'shootplan: 1\nshots:\n  a:\n'],
    ['a broken shot', 'shootplan: 1\nshots:\n  a: [1, 2\n'],
  ])('%s', (_, text) => {
    expect(documentOf(pageOf(coreWith(text))).querySelector('h1')).not.toBeNull();
  });

  it('a figure that is not known leaves its drawing out and says why', () => {
    const core = coreWith(changed(EXAMPLE_PLAN, { 'kit/lenses/macro-100/length': null }));
    const section = sectionOf(documentOf(pageOf(core)), 'frost');
    expect(section.textContent).toContain('Unknown: needs length of macro-100.');
    const titles = [...section.querySelectorAll('figure h3')].map(({ textContent }) => textContent);
    expect(titles).not.toContain('Subject, lens and light from the side');
    expect(titles).toContain('Frame');
  });
});

it('thirty shots of a film, with every drawing there is, stay under 1 MB', () => {
  const [, text] = samples.find(([name]) => name.startsWith('tide'))!;
  const shot = /^ {2}swirl:\n(?: {4}.*\n)+/m.exec(text)![0];
  const many = Array.from({ length: 30 }, (_, index) => shot.replace('swirl', `swirl-${index}`));
  const core = sampleCore(text.replace(shot, many.join('')));
  const { shots } = core.sheet(PLAN);
  expect(shots.length).toBeGreaterThanOrEqual(30);
  expect(shots.at(-1)!.drawings.filter(({ picture }) => picture)).toHaveLength(11);
  expect(Buffer.byteLength(pageOf(core))).toBeLessThan(1_000_000);
});

describe('what a shot comes to', () => {
  const check = (done: boolean) => ({ name: 'a', what: 'A', done, by: null });

  it('is not simply ready while checks are open', () => {
    const section = sectionOf(documentOf(pageOf(coreWith(EXAMPLE_PLAN))), 'frost');
    const open = section.querySelectorAll('.checks li').length;
    expect(section.querySelector('.state')!.textContent).toBe(`No errors; ${open} checks open`);
  });

  it.each([
    ['ready', [], 'Ready'],
    ['ready', [true, true], 'Ready'],
    ['ready', [true, false], 'No errors; 1 check open'],
    ['look', [false], 'Needs attention'],
    ['not-ready', [false], 'Has errors'],
  ] as const)('%s with checks done %j', (state, done, words) => {
    expect(stateWords({ state, lacks: [], checks: done.map(check) })).toBe(words);
  });
});

it('ticks no shot in the list at the top before its checks are done', () => {
  // Common practice on a set: a tick stands for work that is done.
  const signs = [...documentOf(pageOf(coreWith(EXAMPLE_PLAN))).querySelectorAll('nav.shots a')];
  expect(signs.map(({ textContent }) => textContent?.[0])).toEqual(['\u25cb', '\u25cb']);
});

it('names the diffuser that a shot puts before a light, whether its loss is read or not', () => {
  const lightOf = (relight: string) =>
    sectionOf(
      documentOf(pageOf(coreWith(changed(EXAMPLE_PLAN, { 'shots/frost/relight': relight })))),
      'frost',
    ).textContent!;
  const words = 'through a diffuser of 400 \u00d7 300 mm';
  expect(lightOf('{ panel: { emitting-size: 400 x 300 mm } }')).toContain(words);
  const read = '{ panel: { emitting-size: 400 x 300 mm, illuminance: 700 lx } }';
  expect(lightOf(read)).toContain(words);
  expect(lightOf('{ panel: { at: { distance: 500 mm } } }')).not.toContain('diffuser of');
});
