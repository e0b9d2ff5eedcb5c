/** What holds of every source: its size, that no test is passed over, where its words come from. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { read, sources, tracked, withoutComments } from './support/project.ts';

/** What one person takes in at a sitting. */
const MOST_LINES = 450;

it('no source has more than 450 lines', () => {
  const long = sources.filter((file) => read(file).split('\n').length > MOST_LINES + 1);
  expect(long).toEqual([]);
});

describe('tests', () => {
  const tests = sources.filter((file) => file.startsWith('tests/'));
  const PASSED_OVER =
    /\b(?:describe|it|test|suite|bench)(?:\.\w+)*\.(?:skip|todo|only|fails|skipIf|runIf)\b|\b(?:xit|xdescribe|fit|fdescribe)\(|\bctx\.skip\(/;

  it.each(tests)('%s passes over none of its own', (file) => {
    expect(withoutComments(read(file))).not.toMatch(PASSED_OVER);
  });

  it.each([`it${'.skip'}('x')`, `test.concurrent${'.only'}('x')`, `x${'it'}('x')`])(
    '%s would be seen',
    (line) => {
      expect(line).toMatch(PASSED_OVER);
    },
  );
});

/**
 * A source: an author with a work, a standard, a book, a program, a definition worked out by brute
 * force; "common practice" for what the trade knows, "from memory" where nobody looked it up.
 */
const SOURCE =
  /OpenStax|\bISO \d|\bSMPTE\b|\bCIE\b|\bAPEX\b|ExifTool|[Bb]rute[- ]force|\brays (?:are )?(?:traced|followed)|\bmarginal ray|\bculori\b|\bcolorjs|[Cc]ommon practice|[Tt]hin-lens equation|from memory|(?:\b[A-Z]\. )+[A-Z][a-z]+,|doi\.org|DOI 10\.|https:\/\//;

describe('checks against others', () => {
  const published = sources.filter((file) => /^tests\/published\/[^/]+\.test\.ts$/.test(file));

  it('are there', () => {
    expect(published.length).toBeGreaterThan(5);
  });

  it.each(published)('%s names its sources', (file) => {
    expect(read(file)).toMatch(SOURCE);
  });
});

describe('text under version control', () => {
  const texts = tracked.filter((file) => !/\.(png|vsix|mp4|jpe?g|ico)$|package-lock/.test(file));

  it('holds no path of a single machine', () => {
    const OF_A_MACHINE = /(?<![\w.~:/<>)\]}-])\/(?:home|Users|root|work|tmp|mnt)\/[\w.-]+/;
    const found = texts.flatMap((file) =>
      read(file)
        .split('\n')
        .flatMap((line, index) => (OF_A_MACHINE.test(line) ? [`${file}:${index + 1}`] : [])),
    );
    expect(found).toEqual([]);
  });

  // Words that belong to the making of the project and not to the project. They are kept as
  // digests so that this list does not hold them itself; a finding shows the word.
  const ELSEWHERE = new Set([
    'b4128df29f3726b4',
    '0d4589a90c83b4c2',
    '54e6289e14c7b0e7',
    'd27247eba6ef434b',
    '875a4dbf957b12cf',
    '83366499299704fb',
    '98059a56069ce621',
    '3e20985f72191337',
    '692d1db273131024',
  ]);
  const digest = (word: string): string =>
    createHash('sha256').update(word).digest('hex').slice(0, 16);

  it('holds no word that means nothing to who uses or builds this', () => {
    const seen = new Map<string, string>();
    for (const file of texts) {
      const words = `${file}\n${read(file)}`.toLowerCase().match(/[a-z]+/g) ?? [];
      for (const [index, word] of words.entries()) {
        if (!seen.has(word)) seen.set(word, file);
        const pair = `${word} ${words[index + 1] ?? ''}`;
        if (!seen.has(pair)) seen.set(pair, file);
      }
    }
    const found = [...seen].filter(([word]) => ELSEWHERE.has(digest(word)));
    expect(found).toEqual([]);
  });
});
