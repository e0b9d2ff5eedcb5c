/** The comparison as a page: whole in itself, both frames, inert whatever the plans say. */
import { createHash } from 'node:crypto';
import axe from 'axe-core';
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import type { PageFrame } from '../../shared/api/frame.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparePage, comparePageStyle } from '../../shared/report/compare/html.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const STYLE_HASH = `sha256-${createHash('sha256').update(comparePageStyle()).digest('base64')}`;

/** Of a browser's own: see tests/editor/review-page.test.ts. */
const SCRIPT = 'void 0;';

const pictureOf = (name: string): PageFrame => ({
  width: 32,
  height: 18,
  src: `data:image/png;base64,${btoa(name)}`,
  caption: ['Traced from the plan, not a photograph.', `Of <b>${name}</b>.`],
});

type Frames = (shot: string) => PageFrame | string | null;

function pageOf(
  before: string,
  after: string,
  frames: Readonly<Record<'before' | 'after', Frames>> = {
    before: () => pictureOf('then'),
    after: () => pictureOf('now'),
  },
): string {
  const now = coreWith(after).compared(PLAN);
  const comparison = comparePlans(coreWith(before).compared(PLAN), now);
  const names = { before: 'HEAD:<i>old</i>.shootplan.yaml', after: 'new.shootplan.yaml' };
  const file = 'new.shootplan.yaml';
  const page = { ...names, file, comparison, shots: now.shots, frames };
  return comparePage(page, new Say(), SCRIPT, { style: STYLE_HASH, script: 'sha256-x' });
}

const documentOf = (html: string): Document => new JSDOM(html).window.document;

const texts = (all: Iterable<Element>): string[] =>
  [...all].map(({ textContent }) => textContent ?? '');

const CLOSED = changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/16' });

describe('a shot that changed', () => {
  const page = documentOf(pageOf(EXAMPLE_PLAN, CLOSED));

  it('alone has a section, with what changed, what follows and what is found', () => {
    expect(texts(page.querySelectorAll('.shot h2'))).toEqual(['frost']);
    const shot = page.querySelector('.shot')!;
    const rows = [...shot.querySelectorAll('tr')].map((row) => texts(row.children));
    expect(rows[0]).toEqual(['settings', 'before', 'after']);
    expect(rows[1]).toEqual(['aperture', 'f/8', 'f/16']);
    expect(rows.map(([label]) => label)).toContain('depth of field');
    // The example is exposed within a tenth of a stop at f/8; f/16 is two full stops less.
    expect(rows.find(([label]) => label === 'exposure')![2]).toMatch(/^−2(\.\d)? stops/);
    expect(texts(shot.querySelectorAll('.limits li')).join('\n')).toMatch(
      /^new warning: The shot is .* underexposed\.$/m,
    );
    expect(shot.querySelector('.state')!.textContent).toMatch(/^New warnings: \d/);
    expect(page.querySelector('.beside')!.textContent).toBe('1 shot unchanged.skin');
  });

  it('has both frames side by side, and what is said of them', () => {
    const frames = page.querySelector('.frames')!;
    const [before, after] = frames.querySelectorAll('img');
    expect([before!.getAttribute('src'), after!.getAttribute('src')]).toEqual([
      pictureOf('then').src,
      pictureOf('now').src,
    ]);
    expect(texts(frames.querySelectorAll('.said p'))).toEqual([
      'Before: Of <b>then</b>.',
      'After: Of <b>now</b>.',
      'Traced from the plan, not a photograph.',
    ]);
  });

  it('keeps what is found as before apart from what is new', () => {
    const dark = changed(EXAMPLE_PLAN, { 'shots/frost/iso': '100' });
    const darker = changed(dark, { 'shots/frost/about': '"dim"' });
    const items = texts(documentOf(pageOf(dark, darker)).querySelectorAll('.limits li'));
    expect(items.join('\n')).toMatch(/^unchanged warning: The shot is .* underexposed\.$/m);
    expect(items.filter((item) => item.startsWith('new'))).toEqual([]);
  });
});

describe('frames', () => {
  const framesOf = (before: Frames, after: Frames): Element => {
    const page = documentOf(pageOf(EXAMPLE_PLAN, CLOSED, { before, after }));
    return page.querySelector('.shot .frames')!;
  };

  it('are one where they are alike', () => {
    const frames = framesOf(
      () => pictureOf('same'),
      () => pictureOf('same'),
    );
    expect(texts(frames.querySelectorAll('h3'))).toEqual(['Frame, unchanged']);
    expect(frames.querySelectorAll('img')).toHaveLength(1);
  });

  it('that can not be drawn say why', () => {
    const frames = framesOf(
      () => 'it needs `size` of frost-pane.',
      () => pictureOf('now'),
    );
    expect(frames.querySelector('.undrawn')!.textContent).toBe('it needs size of frost-pane.');
    expect(frames.querySelectorAll('img')).toHaveLength(1);
  });

  it('of a shot that is new or removed are those that there are', () => {
    const only = changed(EXAMPLE_PLAN, { 'shots/frost': null });
    const asked: string[] = [];
    const frames = {
      before: (shot: string) => {
        asked.push(shot);
        return null;
      },
      after: (shot: string) => pictureOf(shot),
    };
    const page = documentOf(pageOf(only, EXAMPLE_PLAN, frames));
    expect(page.querySelector('.shot h2')!.textContent).toBe('frost, new');
    expect(asked).not.toContain('frost');
  });
});

describe('comments of a review', () => {
  const before = changed(EXAMPLE_PLAN, { 'shots/skin/review': '[{ says: <b>first</b> }]' });
  const after = changed(EXAMPLE_PLAN, {
    'shots/frost/review':
      '[{ by: rv, time: 2027-03-02T10:41:07Z, says: Wider?, answer: No room. }, { says: Sharper? }]',
    'shots/skin/review': '[{ says: <b>first</b> }]',
  });
  const page = documentOf(pageOf(before, after));

  it('stand under their shots, changed or not, with their answers', () => {
    const [frost] = page.querySelectorAll('.shot');
    expect(texts(frost!.querySelectorAll('.limits > li'))).toEqual([
      'rv, 2027-03-02: Wider?Answer: No room.',
      'Sharper?No answer yet.',
    ]);
    expect(texts(page.querySelectorAll('.same'))).toEqual(['skin<b>first</b>No answer yet.']);
  });

  it('are listed once, and not as settings and findings too', () => {
    expect(page.body.textContent).not.toContain('review.1');
    expect(texts(page.querySelectorAll('.severity'))).toEqual([]);
    const removed = documentOf(pageOf(after, before));
    expect(removed.querySelector('.shot')!.textContent).toContain('review.1.saysWider?not set');
  });

  it('can be written on every shot of the plan after, and on no other', () => {
    const commented = (from: string, to: string): (string | undefined)[] =>
      [...documentOf(pageOf(from, to)).querySelectorAll<HTMLElement>('[data-shot]')].map(
        ({ dataset }) => dataset.shot,
      );
    expect(commented(EXAMPLE_PLAN, CLOSED).sort()).toEqual(['frost', 'skin']);
    expect(commented(EXAMPLE_PLAN, changed(EXAMPLE_PLAN, { 'shots/frost': null }))).toEqual([
      'skin',
    ]);
  });
});

it('says that nothing is different', () => {
  const page = documentOf(pageOf(EXAMPLE_PLAN, EXAMPLE_PLAN));
  expect(page.querySelector('.plan')!.textContent).toContain('The plans are identical.');
  expect(page.querySelectorAll('.shot')).toHaveLength(0);
});

const HOSTILE = {
  'shots/frost/about':
    '"</title></style><svg onload=alert(1)> | \\u202E <script>alert(1)</script> \\u001b[31m"',
  'shots/skin/about': '"<img src=x onerror=alert(1)> `code` https://x.example"',
  title: '"<b>"',
} as const;

describe('what hostile plans say', () => {
  const html = pageOf(EXAMPLE_PLAN, changed(EXAMPLE_PLAN, HOSTILE));
  const page = documentOf(html);

  it('stands in the page as text and nothing else', () => {
    expect(page.querySelectorAll('svg, b, i, link, iframe, form')).toHaveLength(0);
    expect(page.querySelectorAll('style')).toHaveLength(1);
    expect(texts(page.querySelectorAll('script'))).toEqual([SCRIPT]);
    const attributes = [...page.querySelectorAll('*')].flatMap((one) => [...one.attributes]);
    expect(attributes.filter(({ name }) => name.startsWith('on') || name === 'style')).toEqual([]);
    for (const image of page.querySelectorAll('img'))
      expect(image.getAttribute('src')).toMatch(/^data:image\/png;base64,/);
    expect(html).not.toMatch(/(?![\t\n])[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u);
    expect(page.body.textContent).toContain('<script>alert(1)</script>');
    expect(page.body.textContent).toContain('HEAD:<i>old</i>.shootplan.yaml');
  });

  it('meets a policy that allows the own style and pictures in the page', () => {
    expect(page.querySelector('meta[http-equiv]')!.getAttribute('content')).toBe(
      `default-src 'none'; style-src '${STYLE_HASH}'; script-src 'sha256-x'; img-src data:; base-uri 'none'; form-action 'none'`,
    );
    expect(page.querySelector('style')!.textContent).toBe(comparePageStyle());
  });

  it('has nothing that axe finds', async () => {
    const { window } = new JSDOM(html, { runScripts: 'outside-only' });
    window.eval(axe.source);
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(
      window.document.documentElement,
      { rules: { 'color-contrast': { enabled: false } }, resultTypes: ['violations'] },
    );
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  });
});
