/** Words of reports come out whole: no arrow with nothing behind it, no sentence cut, no stray marks. */
import MarkdownIt from 'markdown-it';
import { expect, it } from 'vitest';
import { paragraph, worded } from '../../shared/api/document.ts';
import { clipsDocument } from '../../shared/report/clips.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { editWords } from '../../shared/report/compare/edit.ts';
import { inertMarkdown, markdownText } from '../../shared/report/document/markdown.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const say = new Say(() => 'mm');
const rendered = (markdown: string): string =>
  new MarkdownIt({ html: true, linkify: true }).render(markdown);

const withCuts = (first: string, count: number): string =>
  `${EXAMPLE_PLAN}
edit:
  cuts:
    one: { shot: skin, duration: ${first} }
${Array.from({ length: count }, (_, at) => `    next-${at}: { shot: skin, duration: 1 s }\n`).join('')}`;

const compared = (count: number) => {
  const of = (text: string) => coreWith(text).compared(PLAN);
  return comparePlans(of(withCuts('2 s', count)), of(withCuts('3 s', count)));
};

it('compare says how many more changes of cuts there are, and no arrow behind it', () => {
  const many = compared(20);
  const last = editWords(many.edit).at(-1)!;
  expect(last.label).toMatch(/^and \d+ more changes$/);
  const text = terminalText(comparisonDocument(many, say, 'terminal'), false);
  expect(text).toContain(`${last.label}\n`);
  expect(text).not.toMatch(/→\s*$/m);
  for (const line of text.split('\n').filter((each) => each.includes('→')))
    expect(line).toMatch(/\S +\S.* → \S/);
  expect(markdownText(comparisonDocument(many, say, 'page'))).toContain(`| ${last.label} |  |  |`);
  // A short label isn't pushed aside by the long one.
  expect(text).toMatch(/begins at frame {2}\S/);
});

it('compare says one more in its own words', () => {
  const counts = Array.from({ length: 20 }, (_, count) => editWords(compared(count).edit).at(-1)!);
  expect(counts.map(({ label }) => label)).toContain('and 1 more change');
});

const LONG = `media/${'a-long-day-by-the-sea/'.repeat(5)}0007.mov`;

it('clips leaves sentences whole, however long the path of a clip is', () => {
  const core = coreWith(
    `${EXAMPLE_PLAN}\nclips:\n  skin:\n    - { file: ${LONG}, verdict: keep }\n`,
  );
  const found = core.checkClips(PLAN, new Map([[LONG, { state: 'not-found' }]]));
  expect(found.map(({ what }) => what)).toEqual([`The clip ${LONG} was not found.`]);
  const markdown = markdownText(
    clipsDocument({ clips: [], cuts: [], notAsked: [], stopped: false }, say, found),
  );
  expect(rendered(markdown)).toContain(`The clip ${LONG} was not found.`);
});

it('numbers stand in Markdown as they are said', () => {
  const markdown = markdownText(
    sheetDocument(coreWith(EXAMPLE_PLAN).sheet(PLAN, { isWrittenOn: true }), say),
  );
  expect(markdown).not.toMatch(/\d\\\./);
  expect(inertMarkdown('10.4 min, f/5.6 (stack)')).toBe('10.4 min, f/5.6 (stack)');
});

it('a number that would begin a list, a heading or a quote does not', () => {
  for (const text of ['1. not a list', '12) nor this', '# no heading', '> no quote', '+ no item'])
    expect(rendered(inertMarkdown(text)).trim()).toBe(`<p>${text.replaceAll('>', '&gt;')}</p>`);
});

it.each([
  ['needs `card` of body-a', 'needs <code>card</code> of body-a'],
  ['a lone ` is text', 'a lone ` is text'],
  ['`a` and *b* and `<i>`', '<code>a</code> and *b* and `&lt;i&gt;`'],
  ['`a|b` parts no cells', '`a|b` parts no cells'],
])('words: %s', (text, html) => {
  expect(rendered(markdownText([paragraph(worded(text))])).trim()).toBe(`<p>${html}</p>`);
});

it('what a plan says between backticks is no code', () => {
  expect(rendered(inertMarkdown('`code` _em_ A001_C0007_x')).trim()).toBe(
    '<p>`code` _em_ A001_C0007_x</p>',
  );
});
