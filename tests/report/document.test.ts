/** One document, three printers: what each makes of it, and that nothing in a text acts in any. */
import fc from 'fast-check';
import { JSDOM } from 'jsdom';
import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import {
  type Block,
  changes,
  list,
  paragraph,
  section,
  strong,
  table,
  toned,
  worded,
} from '../../shared/api/document.ts';
import { blockHtml } from '../../shared/report/document/html.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { plainLines, terminalText } from '../../shared/report/document/terminal.ts';
import { markup } from '../../shared/report/markup.ts';

const PARTS: readonly Block[] = [
  ...section(2, 'drift', [
    paragraph(''),
    changes('set', [{ label: 'iso', before: '800', after: '1600' }]),
    changes('it follows', [{ label: 'depth of field', before: '2 mm', after: '1.5 mm' }], true),
    list([[strong('new'), ' ', toned('error', 'error'), ': ', worded('`iso` is out of range.')]]),
  ]),
  table(
    ['Clip', 'Shot', 'Length'],
    [
      ['a.mp4', 'drift', '10.4 min'],
      ['b|c.mp4', 'drift'],
    ],
  ),
  list([{ text: 'iso: 800', more: ['without it: dark'] }, 'shutter'], { lead: 'Then:' }),
  list(['focus', 'lamps'], { done: [true, false] }),
  { kind: 'pairs', rows: [['field', '40 x 22.5 mm']], least: 8 },
  ...section(3, 'nothing to say', [list([]), paragraph('')]),
];

it('a terminal has it in lines, aligned and indented', () => {
  expect(terminalText(PARTS, false)).toBe(
    [
      'drift',
      '  iso  800 → 1600',
      '  it follows:',
      '    depth of field  2 mm → 1.5 mm',
      '  new error: `iso` is out of range.',
      '',
      'Clip     Shot   Length',
      'a.mp4    drift  10.4 min',
      'b|c.mp4  drift',
      '',
      'Then:',
      '  iso: 800',
      '    without it: dark',
      '  shutter',
      '',
      'focus',
      'lamps',
      '',
      'field     40 x 22.5 mm',
      '',
    ].join('\n'),
  );
  expect(terminalText(PARTS, true)).toContain('  new \u001b[1;31merror\u001b[0m: `iso`');
  expect(plainLines(PARTS)).not.toContain('');
});

it('Markdown has it in headings, tables and lists', () => {
  expect(markdownText(PARTS)).toBe(
    [
      '## drift',
      '',
      '| set | before | after |',
      '| --- | --- | --- |',
      '| iso | 800 | 1600 |',
      '',
      '| it follows | before | after |',
      '| --- | --- | --- |',
      '| depth of field | 2 mm | 1.5 mm |',
      '',
      '- **new** error: `iso` is out of range.',
      '',
      '| Clip | Shot | Length |',
      '| --- | --- | --- |',
      '| a.mp4 | drift | 10.4 min |',
      '| b\\|c.mp4 | drift |  |',
      '',
      'Then:',
      '',
      '- iso: 800',
      '  - without it: dark',
      '- shutter',
      '',
      '- [x] focus',
      '- [ ] lamps',
      '',
      '- field: 40 x 22.5 mm',
      '',
    ].join('\n'),
  );
});

it('HTML has it in the elements that say so', () => {
  const html = PARTS.map((block) => markup(blockHtml(block))).join('');
  const { document } = new JSDOM(html).window;
  const texts = (selector: string) =>
    [...document.querySelectorAll(selector)].map(({ textContent }) => textContent);
  expect(texts('h2')).toEqual(['drift']);
  expect(texts('code')).toEqual(['iso']);
  expect(texts('.severity.error')).toEqual(['error']);
  expect(texts('td')).toEqual(expect.arrayContaining(['2 mm', '1.5 mm', 'b|c.mp4', '10.4 min']));
  expect(texts('li li')).toEqual(['without it: dark']);
  expect(document.querySelectorAll('input[checked]')).toHaveLength(1);
  expect(texts('dt')).toEqual(['field']);
});

describe('by another reader of Markdown', () => {
  const read = (blocks: readonly Block[]) =>
    new JSDOM(new MarkdownIt({ html: true, linkify: true }).render(markdownText(blocks))).window
      .document;
  // What Markdown, HTML and its entities act on, what opens blocks at a line's start, and words.
  const texts = fc
    .array(
      fc.constantFrom(
        ...['\\', '`', '``', '*', '**', '_', '__', '~~', '[', ']', '(', ')', '!', '<', '>', '<b>'],
        ...['|', '&', '&amp;', '#', '-', '+', '=', '1.', '2)', '10.4', '://', 'a', 'http', ' '],
      ),
      { minLength: 1, maxLength: 12 },
    )
    .map((parts) => parts.join('').replace(/\s+/g, ' ').trim())
    .filter((text) => text !== '');
  // An address is broken by a mark that nobody sees; so many blanks are one.
  const bare = (text: string | null | undefined) =>
    (text ?? '').replaceAll('\u200b', '').replace(/\s+/g, ' ').trim();

  it('anybody’s text is text, wherever it stands', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const page = read([
          ...section(2, text, [paragraph(text), list([text]), table(['x', text], [[text, 'y']])]),
        ]);
        for (const selector of ['h2', 'p', 'li', 'th:last-child', 'td:first-child'])
          expect(bare(page.querySelector(selector)?.textContent)).toBe(text);
        expect(page.querySelectorAll('code, strong, em, s, a, img, b, h1, li li')).toHaveLength(0);
      }),
      { numRuns: 150, examples: [['#'], ['a #'], ['a \\# ##'], ['1.'], ['# 1. -']] },
    );
  });

  it('words of the language are code, and a bar in them ends no cell', () => {
    const page = read([table(['x'], [[worded('needs `loss` of 10.4')], [worded('`a|b` and `c')]])]);
    const cells = [...page.querySelectorAll('td')].map(({ textContent }) => textContent);
    expect(cells).toEqual(['needs loss of 10.4', '`a|b` and `c']);
    expect([...page.querySelectorAll('code')].map(({ textContent }) => textContent)).toEqual([
      'loss',
    ]);
  });
});

it('no character of a text acts in a terminal or a page', () => {
  const text = '\u001b[31mred \u202e \u2028 <i>x</i> "q"';
  const active = /(?!\n)[\p{Cc}\u2028\u202a-\u202e]/u;
  expect(terminalText([paragraph(text), list([text])], false)).not.toMatch(active);
  expect(markdownText([paragraph(text), list([text])])).not.toMatch(active);
  expect(markup(blockHtml(paragraph(text)))).not.toMatch(/<i>|"q"/);
  expect(markup(blockHtml(list([worded(text)])))).not.toMatch(active);
});
