/** The tolerant parser: what it makes of texts that are out of the common, and that nothing is lost. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../shared/syntax/parser.ts';
import type { Syntax } from '../../shared/syntax/syntax.ts';
import type { Node } from '../../shared/syntax/tree.ts';
import { hostilePlan } from '../fuzz/text-plans.ts';
import { manyRuns } from '../support/runs.ts';

/** The tree as data: mappings, lists and texts; `several` where more stands than may. */
function plain(node: Node | null, syntax: Syntax): unknown {
  if (node === null) return null;
  const more = syntax.more.get(node);
  const own =
    node.kind === 'scalar'
      ? node.text
      : node.kind === 'seq'
        ? node.items.map((item) => plain(item, syntax))
        : Object.fromEntries(node.pairs.map(({ key, value }) => [key.text, plain(value, syntax)]));
  return more ? { several: [own, ...more.map((each) => plain(each, syntax))] } : own;
}

const read = (text: string) => {
  const syntax = parse(text)!;
  return {
    tree: plain(syntax.root, syntax),
    defects: syntax.defects.map(({ kind, span }) => `${kind} ${text.slice(span.start, span.end)}`),
  };
};

describe('reads on behind', () => {
  test.each([
    ['a key without its colon', 'a:\n  c: 1\n  b\n', { a: { c: '1', b: null } }, ['no-colon b']],
    ['text behind a quote', 'a:\n  b: "x" y\n  c: 1\n', { a: { b: 'x', c: '1' } }, ['behind y']],
    ['an open quote', 'a:\n  b: "x\n  c: 1\n', { a: { b: 'x', c: '1' } }, ['open-quote "']],
    [
      'an open bracket',
      'a:\n  b: [x, y\n  c: 1\n',
      { a: { b: ['x', 'y'], c: '1' } },
      ['column c', 'open-bracket ['],
    ],
    [
      'a bracket of the other kind',
      'a: { b: 1 ]\nc: 2\n',
      { a: { b: '1' }, c: '2' },
      ['wrong-bracket ]'],
    ],
    ['a missing comma', 'a: { b: "x" c, d: 1 }\n', { a: { b: 'x', d: '1' } }, ['behind c']],
    ['a hole', 'a: [x, , y]\n', { a: ['x', null, 'y'] }, ['hole ,']],
    [
      'a key too far right',
      'a:\n  b: 1\n    c: 2\n  d: 3\n',
      { a: { b: '1', c: '2', d: '3' } },
      ['out-of-line c'],
    ],
    [
      'a key between two columns',
      'a:\n    b: 1\n  c: 2\n    d: 3\n',
      { a: { b: '1', c: '2', d: '3' } },
      ['out-of-line c'],
    ],
    [
      'keys too far right, in one column',
      'a:\n  b: 1\n    c: 2\n    d: 3\n  e: 4\n',
      { a: { b: '1', c: '2', d: '3', e: '4' } },
      ['out-of-line c'],
    ],
    ['a word above keys', 'a:\n  b\n  c: 1\n', { a: { b: null, c: '1' } }, ['no-colon b']],
    [
      'a list behind a value',
      'a:\n  b: 1\n    - x\n  c: 2\n',
      { a: { b: { several: ['1', ['x']] }, c: '2' } },
      ['second -'],
    ],
    [
      'a line between brackets at its key',
      'a: [x,\ny]\nb: 1\n',
      { a: ['x'], 'y]': null, b: '1' },
      ['column y', 'open-bracket [', 'no-colon y]'],
    ],
    ['properties', 'a: &x !t\n  b: &y 1\n', { a: { b: '1' } }, ['uncommon &x !t', 'uncommon &y ']],
    [
      'a line that is nothing',
      'a:\n  b: 1\n    ?!\n  c: 2\n',
      { a: { b: '1', c: '2' } },
      ['stray ?!'],
    ],
    ['a colon in a value', 'a: b: c\n', { a: 'b: c' }, ['colon :']],
    ['prose', 'a: |\n  b: 1\n\n  c\nd: 2\n', { a: '|\n  b: 1\n\n  c', d: '2' }, ['uncommon |']],
    ['a tab', 'a:\tb\nc: d\n', { a: '\tb', c: 'd' }, ['uncommon a:', 'start \t', 'blank \t']],
    ['a start that is none', 'a: @b\nc: d\n', { a: '@b', c: 'd' }, ['start @']],
  ])('%s', (_, text, tree, defects) => {
    expect(read(text)).toEqual({ tree, defects });
  });
});

test('a text that nests too deep is not read', () => {
  expect(parse(`a: ${'['.repeat(100_000)}`)).toBeNull();
  expect(parse(`a:\n${'- '.repeat(100_000)}b`)).toBeNull();
});

test('thousands of lines of properties are read, though none of them is', () => {
  const syntax = parse(`a:\n${'  &x\n'.repeat(50_000)}  b: 1\n`)!;
  expect(plain(syntax.root, syntax)).toEqual({ a: { b: '1' } });
});

/** Blanks where a node, a defect, or a mark between nodes stands. */
function trivia(text: string, { root, defects, more, marks }: Syntax): string {
  const rest = [...text];
  const cover = ({ start, end }: { start: number; end: number }) => rest.fill(' ', start, end);
  const visit = (node: Node | null): void => {
    if (!node) return;
    for (const other of more.get(node) ?? []) visit(other);
    for (const at of marks.get(node) ?? []) if (at < text.length) rest[at] = ' ';
    if (node.kind === 'scalar') cover(node.span);
    else if (node.kind === 'seq') node.items.forEach(visit);
    else
      for (const { key, value } of node.pairs) {
        cover(key.span);
        const colon = /^\s*:/.exec(text.slice(key.span.end))?.[0].length ?? 0;
        cover({ start: key.span.end, end: key.span.end + colon });
        visit(value);
      }
  };
  visit(root);
  for (const { span } of defects) cover(span);
  return rest.join('');
}

test('each character stands in a node, in a defect, or in a comment', () => {
  fc.assert(
    fc.property(hostilePlan, (written) => {
      // One unit a character, as offsets count them.
      const text = written.replace(/[\ud800-\udfff]/g, 'x');
      const syntax = parse(text);
      if (!syntax) return;
      const left = trivia(text, syntax).replace(/#[^\r\n]*/g, '');
      expect(left.trim(), text).toBe('');
    }),
    { numRuns: manyRuns(300) },
  );
}, 3_600_000);
