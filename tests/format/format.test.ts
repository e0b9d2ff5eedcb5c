/**
 * The layout of plans. Outside reference: `vscode-languageserver-textdocument` (npm) makes the edits
 * as editors do.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { formatEdits, formatted } from '../../shared/format/format.ts';
import { split } from '../../shared/text/split.ts';
import { merge } from '../fuzz/text-merge.ts';
import { hostilePlan } from '../fuzz/text-plans.ts';
import { manyRuns } from '../support/runs.ts';

const samples = readdirSync('samples')
  .filter((name) => name.endsWith('.shootplan.yaml'))
  .map((name) => [name, readFileSync(`samples/${name}`, 'utf8')] as const);

/** As an editor makes the edits. */
function made(text: string, options = {}, lines?: typeof LINES): string {
  const document = TextDocument.create('plan', 'shootplan', 1, text);
  const edits = formatEdits(split(text), options, lines).map(({ range, text: newText }) => ({
    range,
    newText,
  }));
  return TextDocument.applyEdits(document, edits);
}

const withoutPlaces = (value: unknown): string =>
  JSON.stringify(value, (key, inner) => (key === 'span' ? undefined : inner));

/** What is read of a text, without where it stands. */
function read(text: string): string {
  const { root, problems } = merge(split(text));
  return withoutPlaces([root, problems.map(({ rule, code, args }) => ({ rule, code, args }))]);
}

describe('a format', () => {
  it.each(samples)('leaves the sample %s as it is', (_, text) => {
    expect(formatted(text)).toBe(text);
    expect(formatted(text, { align: 'keep' })).toBe(text);
  });

  it('sets columns, blanks and the end', () => {
    const rough =
      'shootplan:   1\nkit:\n    lenses:   \n        long:\n            focal-length:  100 mm   # the long one\n' +
      '            closest: {from-sensor: 0.3 m,magnification :  1x}\n\n\nclips:\n  a:\n  -   file: x.mp4\n' +
      '      verdict:   keep\n  - {file: y.mp4}\nrigs:\n   r:\n     parts: [ a,b ,{} , [ ] ]\n\n\n';
    expect(formatted(rough)).toBe(
      'shootplan: 1\nkit:\n  lenses:\n    long:\n      focal-length: 100 mm          # the long one\n' +
        '      closest: { from-sensor: 0.3 m, magnification: 1x }\n\n\nclips:\n  a:\n    - file: x.mp4\n' +
        '      verdict: keep\n    - { file: y.mp4 }\nrigs:\n  r:\n    parts: [a, b, {}, []]\n',
    );
  });
});

const LINES = { first: 5, last: 6 };

describe('a part', () => {
  const rough =
    'shots:\n  a:\n    field:   1 mm\n  b:\n      light:  [x,y]\n      iso:  100\n      note:  no\n';

  it('changes its lines alone', () => {
    expect(made(rough, {}, { first: 2, last: 2 })).toBe(rough.replace('field:   1', 'field: 1'));
  });

  it('moves lines where the whole still reads the same', () => {
    expect(made(rough, {}, { first: 4, last: 6 })).toBe(
      rough
        .replace(/ {6}/g, '    ')
        .replace(/(light|iso|note): {2}/g, '$1: ')
        .replace('x,y', 'x, y'),
    );
  });

  it('keeps the columns where it would read otherwise', () => {
    expect(made(rough, {}, LINES)).toBe(rough.replace(/(iso|note): {2}/g, '$1: '));
  });
});

describe('what was lined up by hand', () => {
  const table = 'shots:\n  a: { iso:   100, field:  1 mm }\n  b: { iso: 12800, field: 10 mm }\n';

  it('stays when that is asked for', () => {
    expect(formatted(table, { align: 'keep' })).toBe(table);
    expect(formatted(table)).toBe(table.replace('  100', '100').replace(' 1 mm', '1 mm'));
  });
});

it('leaves what cannot be read, and keeps line ends, marks and prose', () => {
  const text =
    '\ufeffshots:\r\n  a:\r\n    iso:   100\r\n  b:\r\n    iso:   [1\r\n  c: &x\r\n    iso:   2\r\n' +
    '  d:\r\n    about: |\r\n      one  \r\n\r\n        two\r\n    iso:   3';
  expect(made(text)).toBe(text.replace('iso:   100', 'iso: 100').replace('iso:   3', 'iso: 3\r\n'));
});

it('moves entries only together with their section', () => {
  const sound = 'lights:\n    a:\n        kind: led\n    # of b\n    b:\n        kind: led\n';
  expect(formatted(sound)).toBe('lights:\n  a:\n    kind: led\n  # of b\n  b:\n    kind: led\n');
  const broken = `${sound}    c:\n        kind: [led\n`;
  expect(formatted(broken)).toBe(broken.replace(/ {8}(?=kind: led)/g, '      '));
});

describe('whatever is written', () => {
  it('reads the same, and a second time nothing changes', () => {
    let changed = 0;
    fc.assert(
      fc.property(hostilePlan, fc.constantFrom('tidy', 'keep'), (text, align) => {
        const options = { align } as const;
        const once = formatted(text, options);
        if (once !== text) changed++;
        expect(read(once)).toBe(read(text));
        expect(made(text, options)).toBe(once);
        expect(formatted(once, options)).toBe(once);
      }),
      { numRuns: manyRuns(100) },
    );
    expect(changed).toBeGreaterThan(20);
  });
});
