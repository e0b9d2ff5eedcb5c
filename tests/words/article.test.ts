/** What stands before a word in a sentence. */
import { expect, test } from 'vitest';
import { withArticle } from '../../shared/words/article.ts';
import { findingsOf } from '../support/plans.ts';

test.each([
  ['extension tube', 'an extension tube'],
  ['edit', 'an edit'],
  ['f-number', 'an f-number'],
  ['ISO speed', 'an ISO speed'],
  ['ISO speeds', 'ISO speeds'],
  ['two lengths', 'two lengths'],
  ['lens', 'a lens'],
])('%s', (word, said) => {
  expect(withArticle(word)).toBe(said);
});

test('a key that is not known here is told where it stands, and where it belongs', () => {
  const kit = 'kit:\n  tubes:\n    t: { lenght: 12 mm, iso: 100 }\n';
  expect(findingsOf(`shootplan: 1\n${kit}`).map(({ what }) => what)).toEqual([
    '`lenght` is not a key of an extension tube. Did you mean `length`?',
    '`iso` is not a key of an extension tube; it belongs in a camera body, an exposure reading or a shot.',
  ]);
});
