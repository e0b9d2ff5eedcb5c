/**
 * How the program and its pages speak: the words that they leave to others, one apostrophe, one way to
 * write shares and sizes, sentences that are read at once. Over every message, the language's own
 * descriptions, every page, the help, the manifest and what is printed of the samples.
 */
import { describe, expect, it } from 'vitest';
import { lamellaIn } from '../support/command-line.ts';
import { each } from '../support/each.ts';
import { ROOT } from '../tidy/support/project.ts';
import { piecesOf } from './support/prose.ts';
import {
  contributed,
  described,
  editorMessages,
  helps,
  messages,
  pages,
  samples,
  type Text,
} from './support/read-by-people.ts';

/** Sentences of pages, each with the page and its line. */
const pieces: readonly Text[] = pages.flatMap(({ at, text }) =>
  piecesOf(text).map((piece) => ({ at: `${at}:${piece.line}`, text: piece.text })),
);

/** Help as paragraphs, without the lines of names that head them; an indented line goes on. */
const paragraphs = ({ at, text }: Text): readonly Text[] =>
  text
    .replace(/^ *(?:lamella [A-Z\w-]|-{1,2}\w).*$/gm, '')
    .split(/\n\s*\n|\n(?= {2}\d)/)
    .map((part) => ({ at, text: part.replace(/\s*\n\s*/g, ' ').trim() }))
    .filter((one) => one.text !== '');

const help = (await helps()).flatMap(paragraphs);

/** What samples say of themselves: `about` and comments. */
const comments: readonly Text[] = samples.flatMap(({ at, text }) =>
  [...text.matchAll(/(?:^|\s)# (.*)$|^\s+about: (.*)$/gm)].map(([, comment, about]) => ({
    at,
    text: comment ?? about ?? '',
  })),
);

const ALL: readonly (readonly [string, readonly Text[]])[] = [
  ['messages', [...messages, ...editorMessages]],
  ['the schema', described],
  ['pages', pieces],
  ['help', help],
  ['the manifest', contributed],
  ['samples', comments],
];

/** What no camera person says, and what means two things. */
const AVOIDED: readonly RegExp[] = [
  /\bworks? as\b/i,
  /\breckon/i,
  /\bc[oa]mes? to\b/i,
  /\bmend(?:s|ed|ing)?\b/i,
  /\bworked out\b/i,
  /\b(?:is|are) no (?!longer|room|frame)(?:key|name|mirror|film|bubble|boom|number|value)\b/i,
  /\bof what\b/i,
  /\bprices?\b/i,
  /\bways? out\b/i,
  /(?<!\bat )\bleast\b/i,
  /\bgreatest\b/i,
  /\bhonest\b/i,
  /(?<!\bbattery )\blife\b/i,
  /\brim\b/i,
  /\bparted\b/i,
  /\bwanted\b/i,
  /\b(?:is|are) gone\b/i,
  /\bstands? (?:in|at|beside|behind|before|below|above|there|where|round)\b/i,
  /\bcall sheet\b/i,
  /\btoo (?:dark|bright)\b/i,
  /\ban information\b/i,
  /\basks? for\b/i,
  /\bLeft out:/,
  /\bas it stands\b/i,
];

/** More words than this nobody takes in while their hands are wet. */
const MOST_WORDS = 25;

/** Names and what stands in brackets aside. Formulas and long lists of names are looked at, not read. */
const wordsIn = (sentence: string): number =>
  sentence
    .replace(/`[^`]*`/g, 'x')
    .replace(/\([^()]*\)/g, '')
    .split(/\s+/)
    .filter((word) => /[\p{L}{]/u.test(word)).length;

const isFormula = (sentence: string): boolean => /[=·√]/.test(sentence);
const isListOfNames = (sentence: string): boolean => (sentence.match(/`/g) ?? []).length > 10;

const sentencesIn = (text: string): readonly string[] => text.split(/(?<=[.!?;])\s+/);

const isLong = (sentence: string): boolean =>
  !isFormula(sentence) && !isListOfNames(sentence) && wordsIn(sentence) > MOST_WORDS;

/** Without values of a plan, in backticks or as the schema's examples: what is left is English. */
const withoutCode = (text: string): string =>
  text.replace(/`[^`]*`/g, '``').replace(/^For example .*$/, '');

/** "70 %" is a plan's spelling; in words it is "70%". */
const LOOSE_SHARE = /[\d}] %/;
/** "1920 x 1080" is a plan's spelling; in words it is "1920 × 1080". A magnification is "0.9x". */
const PLAN_SIZE = /(?:[\d}]|mm|px|\*\*) x (?:[\d{]|\*\*)/;

const offendersOf = (texts: readonly Text[], is: (text: string) => boolean): readonly string[] =>
  texts.filter(({ text }) => is(text)).map(({ at, text }) => `${at}: ${text}`);

describe.each(ALL)('%s', (_, texts) => {
  it('are there', () => {
    expect(texts.length).toBeGreaterThan(5);
  });

  it('have no word that is avoided', () => {
    const offenders = texts.flatMap(({ at, text }) =>
      AVOIDED.filter((word) => word.test(withoutCode(text))).map(
        (word) => `${at}: ${word.source}: ${text}`,
      ),
    );
    expect(offenders).toEqual([]);
  });

  it('have one apostrophe, the straight one', () => {
    expect(offendersOf(texts, (text) => /[\u2018\u2019\u201c\u201d]/.test(text))).toEqual([]);
  });

  it(`have no sentence over ${MOST_WORDS} words`, () => {
    const long = texts.flatMap(({ at, text }) =>
      sentencesIn(text)
        .filter(isLong)
        .map((sentence) => `${at}: ${sentence}`),
    );
    expect(long).toEqual([]);
  });

  it('write shares as 70% and sizes as 40 × 22.5 mm', () => {
    const offends = (text: string): boolean => LOOSE_SHARE.test(text) || PLAN_SIZE.test(text);
    expect(offendersOf(texts, (text) => offends(withoutCode(text)))).toEqual([]);
  });
});

describe('what is printed of the samples', () => {
  const plans = samples.map(({ at }) => at).filter((at) => at.endsWith('.yaml'));

  it('has one way to write shares and sizes too', async () => {
    const printed = await Promise.all(
      plans.flatMap((plan) =>
        [
          ['sheet', plan, '--format', 'md'],
          ['figures', plan],
        ].map(async (args) => [args.join(' '), (await lamellaIn(ROOT, args)).out] as const),
      ),
    );
    each(
      printed,
      ([, text]) => {
        expect(text).not.toBe('');
        const lines = text.split('\n').map(withoutCode);
        expect(lines.filter((line) => LOOSE_SHARE.test(line) || PLAN_SIZE.test(line))).toEqual([]);
      },
      ([command]) => command,
    );
  });
});

describe('the linter itself', () => {
  it('reads paragraphs, items and cells of a page, and no code', () => {
    const page = [
      '# Head\n\nA sentence\nover two `lines x 2`.\n\n    code here\n',
      '- an item\n  that goes on\n- [link](a.md)\n\n| key | what |\n| --- | --- |\n| `a` | a cell |\n',
      '```yaml\nsize: 1 x 2\n```\n<!-- hidden\ncomment -->\n> said',
    ].join('\n');
    expect(piecesOf(page)).toEqual([
      { line: 1, text: 'Head' },
      { line: 3, text: 'A sentence over two ``.' },
      { line: 8, text: 'an item that goes on' },
      { line: 10, text: 'link' },
      { line: 12, text: 'key' },
      { line: 12, text: 'what' },
      { line: 14, text: 'a cell' },
      { line: 21, text: 'said' },
    ]);
  });

  it.each([
    ['70 %', true],
    ['a payload above 70% of it', false],
    ['{0} x {1} mm', true],
    ['1920 x 1080', true],
    ['40 × 22.5 mm at 0.9x', false],
  ])('%s', (text, offends) => {
    expect(LOOSE_SHARE.test(text) || PLAN_SIZE.test(text)).toBe(offends);
  });

  it('counts words without names and brackets', () => {
    expect(wordsIn('Set `a b c` to 2 mm (or to more than that).')).toBe(4);
    expect(isLong(`${'word '.repeat(MOST_WORDS)}more.`)).toBe(true);
    expect(isLong(`${'word '.repeat(MOST_WORDS)}`)).toBe(false);
  });
});
