/** What holds of every source: its size, that no test is passed over, where its numbers come from. */
import { describe, expect, it } from 'vitest';
import { each } from '../support/each.ts';
import { read, sources, tracked, withoutComments } from './support/project.ts';

/** What one person takes in at a sitting. */
const MOST_LINES = 450;

it('no source has more than 450 lines', () => {
  const long = sources.filter((file) => read(file).split('\n').length > MOST_LINES + 1);
  expect(long).toEqual([]);
});

/** What one keeps in mind of a single function. */
const MOST_OF_A_FUNCTION = 100;

/** `function f() {`, `f(): T {`, `=> {`, as the formatter lays them out; a statement opens no function. */
const OPENS_A_BODY = /(?:\)(?:: [^=]+)?|=>) \{$/;
const STATEMENT = /^(?:\} )?(?:if|for|while|switch|catch|else)\b/;

const indentOf = (line: string): number => line.length - line.trimStart().length;

/** The functions of a text longer than that many lines: where each begins, and how long it is. */
function longFunctions(text: string, most: number): readonly string[] {
  const lines = text.split('\n');
  return lines.flatMap((line, opening) => {
    if (!OPENS_A_BODY.test(line) || STATEMENT.test(line.trimStart())) return [];
    const indent = indentOf(line);
    const isBeside = (other: string) => other !== '' && indentOf(other) === indent;
    const end = lines.findIndex((other, at) => at > opening && isBeside(other));
    // Parameters on lines of their own: it begins above them.
    const start = line.trimStart().startsWith(')')
      ? lines.findLastIndex((other, at) => at < opening && isBeside(other))
      : opening;
    const length = end - start + 1;
    return length > most ? [`${start + 1}: ${length} lines`] : [];
  });
}

describe('functions', () => {
  it('have no more than 100 lines', () => {
    const long = sources
      .filter((file) => /^(?:shared|server|client)\//.test(file))
      .flatMap((file) =>
        longFunctions(read(file), MOST_OF_A_FUNCTION).map((found) => `${file}:${found}`),
      );
    expect(long).toEqual([]);
  });

  it.each([
    'function f(a: number): string {\n  a;\n  a;\n}',
    'export function f(\n  a: number,\n): string {\n}',
    'class A {\n  f() {\n    a;\n    b;\n  }\n}',
    'const f = () => {\n  a;\n\n}',
    'const f =\n  <T>(a: T) =>\n  (b: T) => {\n    a;\n    b;\n  };',
  ])('are counted however they are written: %j', (text) => {
    expect(longFunctions(text, 3)).toHaveLength(1);
    expect(longFunctions(text, 4)).toHaveLength(0);
  });

  it('are no statements and no tables', () => {
    const text = 'if (a) {\n  b;\n  c;\n}\nconst d = {\n  e,\n  f,\n};';
    expect(longFunctions(text, 1)).toEqual([]);
  });
});

describe('tests', () => {
  const tests = sources.filter((file) => file.startsWith('tests/'));
  const PASSED_OVER =
    /\b(?:describe|it|test|suite|bench)(?:\.\w+)*\.(?:skip|todo|only|fails|skipIf|runIf)\b|\b(?:xit|xdescribe|fit|fdescribe)\(|\bctx\.skip\(/;

  it('no file passes over any of its own', () => {
    each(tests, (file) => {
      expect(withoutComments(read(file))).not.toMatch(PASSED_OVER);
    });
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
  /OpenStax|\b(?:ISO|IEC|SS) ?\d|\bSMPTE\b|\bCIE\b|\bAPEX\b|ExifTool|[Bb]rute[- ]force|\brays (?:are )?(?:traced|followed)|\bmarginal ray|\bculori\b|\bcolorjs|[Cc]ommon practice|[Tt]hin-lens equation|from memory|(?:\b[A-Z]\. )+[A-Z][a-z]+,|doi\.org|DOI 10\.|https:\/\//;

/** The top of a check: of one, or of several that have their source in common. */
const CHECK = /^(?:describe|it|test)(?:\.each)?\(/;
const COMMENT = /^(?:\/\/|\/\*\*| \*)/;

/** The checks of a file, each with the comment above it; what they share is no source of any of them. */
function blocksOf(file: string): readonly { readonly name: string; readonly text: string }[] {
  const lines = read(file).split('\n');
  return lines.flatMap((line, index) => {
    if (!CHECK.test(line)) return [];
    let from = index;
    while (COMMENT.test(lines[from - 1] ?? '')) from--;
    const end = lines.findIndex((other, at) => at > index && /^\S.*\);$/.test(other));
    const text = lines.slice(from, end < 0 ? undefined : end + 1).join('\n');
    return [{ name: `${file}:${index + 1}`, text }];
  });
}

describe('checks against others', () => {
  const published = sources.filter((file) => /^tests\/published\/[^/]+\.test\.ts$/.test(file));

  it('are there', () => {
    expect(published.length).toBeGreaterThan(5);
  });

  it('each names its source: in itself, or in the comment above it', () => {
    each(
      published.flatMap(blocksOf),
      ({ text }) => expect(SOURCE.test(text), 'names a source').toBe(true),
      ({ name }) => name,
    );
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
});
