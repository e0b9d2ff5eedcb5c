/** A comma that lacks between the fields of braces, or is another mark. */
import { expect, test } from 'vitest';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

test.each([
  ['{ distance: 400 mm elevation: 40 deg }', '{ distance: 400 mm, elevation: 40 deg }'],
  ['{ distance: 400 mm; elevation: 40 deg }', '{ distance: 400 mm, elevation: 40 deg }'],
])('%s is offered with its comma', (broken, sound) => {
  const text = SOUND.replace('{ distance: 400 mm, elevation: 40 deg }', broken);
  const core = coreWith(text);
  const errors = core.findings(PLAN).filter(({ severity }) => severity === 'error');
  expect(errors.map(({ why }) => why)).toEqual([
    'If `elevation` is a key, put a comma before it. Otherwise put the value in quotes.',
  ]);
  expect(core.fixesOf(errors[0]!).map(({ edits }) => applied(text, edits))).toEqual([
    SOUND.replace('{ distance: 400 mm, elevation: 40 deg }', sound),
  ]);
});

test('a text with a colon is offered in quotes, and with no comma', () => {
  const clips = (note: string) =>
    `${SOUND}clips:\n  first:\n    - { file: a.mp4, note: ${note} }\n`;
  const text = clips('late sun: low');
  const core = coreWith(text);
  const [error] = core.findings(PLAN).filter(({ severity }) => severity === 'error');
  expect(core.fixesOf(error!).map(({ edits }) => applied(text, edits))).toEqual([
    clips("'late sun: low'"),
  ]);
});
