/** What findings on the text say that a value takes. */
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, findingsOf } from '../support/plans.ts';

it.each([
  ['shots/frost/take', '{ duration: 3:00 }', 'wrong-value', 'Write a time, for example 60 s.'],
  ['shots/frost/field', '3:00', 'wrong-value', 'Write a length'],
  ['shots/frost/aperture', '3:00', 'wrong-value', 'Write an f-number'],
  ['deliver/rate', '3:00', 'wrong-value', 'Write frames per second'],
  ['kit/tubes/tube-36', '36 mm', 'wrong-value', 'Example: { length: 12 mm }.'],
  ['shots/frost/aperture', '11', 'unit', 'Write f/ before the number.'],
  ['shots/frost/field', '40', 'unit', 'Use mm, cm, m, um, in or ft.'],
])('%s: %s', (path, value, rule, words) => {
  const found = findingsOf(changed(EXAMPLE_PLAN, { [path]: value })).filter(
    (finding) => finding.rule === rule,
  );
  expect(found.map(({ why }) => why).join()).toContain(words);
});

it.each([
  ['subjects/frost-plate/size', '40 mm', "40 mm can't be read as a value of `size`."],
  [
    'kit/lenses/macro-100/aperture',
    'wide',
    "wide can't be read as the aperture range of `aperture`.",
  ],
])('%s: %s is told once what it should be', (path, value, words) => {
  const found = findingsOf(changed(EXAMPLE_PLAN, { [path]: value }));
  expect(found.map(({ what }) => what)).toContain(words);
});
