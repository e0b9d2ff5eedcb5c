import { expect, test } from 'vitest';
import { parseChunk } from '../../shared/text/parse.ts';
import { nodeAt, pairAt, pathAt } from '../../shared/text/path.ts';
import { split } from '../../shared/text/split.ts';

/** A shot; ‸ marks the offset asked for. */
const at = (marked: string) => {
  const text = marked.replace('‸', '');
  const chunk = split(`shots:\n${text}`)[1] as NonNullable<ReturnType<typeof split>[1]>;
  return { text, offset: marked.indexOf('‸'), tree: parseChunk(chunk).tree };
};

test.each([
  ['  dr‸ift:\n    iso: 1\n', [], 'key'],
  ['  drift:‸\n    iso: 1\n', [], 'inside'],
  ['  drift:\n    is‸o: 1\n', ['iso'], 'key'],
  ['  drift:\n    iso:‸ 1\n', ['iso'], 'inside'],
  ['  drift:\n    iso: 1‸\n', ['iso'], 'value'],
  ['  drift:\n    take: { count:‸ 3 }\n', ['take', 'count'], 'inside'],
  ['  drift:\n    take: { ‸count: 3 }\n', ['take', 'count'], 'key'],
  ['  drift:\n    take: { count: 3 ‸}\n', ['take'], 'inside'],
  ['  drift:\n    light: [wall, la‸mp]\n', ['light', 1], 'value'],
  ['  drift:\n    light:\n      - file: x‸\n', ['light', 0, 'file'], 'value'],
] as const)('%j', (marked, path, on) => {
  const { tree, offset } = at(marked);
  expect(pathAt(tree, offset)).toMatchObject({ path, on });
});

test('outside the entry there is no path', () => {
  const { tree } = at('  drift:\n    iso: 1\n\n‸');
  expect(pathAt(tree, 0)).toBeNull();
  expect(pathAt(tree, 22)).toBeNull();
});

test('values and pairs by path', () => {
  const { tree } = at('  drift:\n    light: [wall, { a: b }]\n    iso: 1\n    iso: 2\n‸');
  expect(nodeAt(tree, ['drift', 'light', 1, 'a'])).toMatchObject({ text: 'b' });
  expect(nodeAt(tree, ['drift', 'iso'])).toMatchObject({ text: '1' });
  expect(nodeAt(tree, ['drift', 'iso', 'deeper'])).toBeNull();
  expect(nodeAt(tree, ['drift', 'light', 2])).toBeNull();
  expect(nodeAt(tree, [])).toBe(tree);
  expect(pairAt(tree, ['drift', 'light'])).toMatchObject({ key: { text: 'light' } });
  expect(pairAt(tree, ['drift', 'light', 0])).toBeNull();
  expect(pairAt(tree, ['drift', 'constructor'])).toBeNull();
});
