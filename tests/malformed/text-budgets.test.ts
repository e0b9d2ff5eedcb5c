/** Texts made to cost time or depth: each is cut and read to its end, with few problems. */
import { expect, test } from 'vitest';
import { MAX_DEPTH, MAX_ENTRY_LENGTH, MAX_PROBLEMS } from '../../shared/syntax/budgets.ts';
import { parseChunk } from '../../shared/text/parse.ts';
import { split } from '../../shared/text/split.ts';

const codes = (text: string): string[] =>
  split(text).flatMap((chunk) => parseChunk(chunk).problems.map(({ code }) => code));

const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index)).join('');

const cases: readonly [name: string, text: string, codes: readonly string[]][] = [
  ['opening brackets', `a: ${'['.repeat(100_000)}\n`, ['too-deep']],
  ['opening braces', `a: ${'{a: '.repeat(60_000)}\n`, ['too-deep']],
  ['dashes', `a:\n  ${'- '.repeat(100_000)}x\n`, ['too-deep']],
  ['question marks', `a:\n  ${'? '.repeat(100_000)}x\n`, ['too-deep']],
  ['ever deeper keys', lines(600, (index) => `${' '.repeat(index)}a:\n`), ['too-deep']],
  ['an endless line', `a: ${'x'.repeat(4_000_000)}\n`, ['too-long']],
  ['spaces behind an open quote', `a: "${' '.repeat(200_000)}\n`, ['unclosed-quote']],
  ['quotes', `a: ${'"'.repeat(200_000)}\n`, ['text-after-value']],
  ['quotes in brackets', `a: ['${'",'.repeat(100_000)}\n`, ['unclosed-quote']],
  ['comments in brackets', `a: [${' #\n'.repeat(80_000)}\n`, ['unmatched-bracket']],
  ['breaks in quotes', `a: ["${'\n'.repeat(200_000)}`, ['unclosed-quote']],
  ['colons in a value', `a: ${'b: '.repeat(80_000)}\n`, ['colon-in-value']],
  ['prose', 'foo bar\n'.repeat(20_000), ['no-key']],
  ['prose without end', 'foo bar\n'.repeat(200_000), ['too-long']],
];

test.each(cases)('%s', (_, text, expected) => {
  expect(codes(text)).toEqual(expected);
});

const many: readonly [name: string, text: string][] = [
  ['open quotes', lines(20_000, () => '    b: "x\n')],
  ['lines that are nothing', lines(40_000, () => '    @\n')],
  ['items that are nothing', `    a: {${'b: c: d, '.repeat(20_000)}}\n`],
  ['anchors', `    a: [${'&a b, '.repeat(30_000)}]\n`],
  ['equal keys', lines(20_000, () => '    k: 1\n')],
  ['tabs and quotes', lines(20_000, () => '\tb: "x\n')],
];

test.each(cases.filter(([, , expected]) => /^too-(deep|long)$/.test(expected[0]!)))(
  '%s: what is not read is told as too much',
  (_, text) => {
    const rules = split(text).flatMap((chunk) =>
      parseChunk(chunk).problems.map(({ rule }) => rule),
    );
    expect(rules).toEqual(['too-much']);
  },
);

test.each(many)('many %s in an entry', (_, text) => {
  const found = codes(`shots:\n  a:\n${text}`);
  expect(found.length).toBeGreaterThan(0);
  expect(found.length).toBeLessThanOrEqual(MAX_PROBLEMS + 1);
});

test('long entries in uncommon shapes are still read whole', () => {
  const text = `shots:\n  a:\n${lines(3000, (index) => `    b${index}: |\n      x: "\n`)}`;
  const [, entry] = split(text);
  const { tree, problems } = parseChunk(entry as NonNullable<typeof entry>);
  expect(problems).toEqual([]);
  const value = tree?.pairs[0]?.value;
  expect(value?.kind === 'map' && value.pairs.length).toBe(3000);
  expect(value?.kind === 'map' && value.pairs[2999]?.value).toMatchObject({ text: 'x: "\n' });
});

test('what stays within the budgets is read', () => {
  const depth = MAX_DEPTH - 2;
  expect(codes(`a: ${'['.repeat(depth)}${']'.repeat(depth)}\n`)).toEqual([]);
  expect(codes(`a: ${'x'.repeat(MAX_ENTRY_LENGTH - 10)}\n`)).toEqual([]);
});
