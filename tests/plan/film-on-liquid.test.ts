/** `film` belongs to a liquid surface: elsewhere it is told, and never read silently. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, findingsOf } from '../support/plans.ts';

const toldOf = (kind: string): readonly string[] =>
  findingsOf(
    changed(EXAMPLE_PLAN, {
      'subjects/soap': `{ kind: ${kind}, orientation: upright, size: 160 x 100 mm, diameter: 40 mm, lifetime: 40 s, finish: mirror, film: { refractive-index: 1.47 } }`,
    }),
  ).flatMap(({ rule, what }) => (rule === 'wrong-value' ? [what] : []));

it('is told of everything but a liquid surface', () => {
  for (const kind of ['film', 'bubble', 'solid'])
    expect(toldOf(kind)).toEqual([
      `\`film\` is what floats on a liquid surface, and this is a ${kind}.`,
    ]);
  expect(toldOf('surface')).toEqual([]);
});
