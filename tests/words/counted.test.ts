/** What is left out is counted in words that fit one as well as several. */
import { expect, test } from 'vitest';
import { DiagnosticMaker, MOST_FINDINGS } from '../../server/diagnostics/to-lsp.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import { tooMuch } from '../../shared/rules/too-much.ts';
import { Say } from '../../shared/say/say.ts';

const START = { line: 0, character: 0 };
const FINDING: LocatedFinding = {
  rule: 'unit',
  severity: 'error',
  file: 'file:///w/a.shootplan.yaml',
  range: { start: START, end: START },
  what: 'A quantity has no unit.',
  why: '',
  related: [],
};

test.each([
  [1, /^1 more finding in this file is not shown\./],
  [2, /^2 more findings in this file are not shown\./],
])('%i more than an editor is sent', (more, said) => {
  const client = { relatedInformation: true, rulePage: null } as ConstructorParameters<
    typeof DiagnosticMaker
  >[0];
  const sent = new DiagnosticMaker(client, (file) => file).make(
    Array.from({ length: MOST_FINDINGS + more }, () => ({ ...FINDING })),
  );
  expect(sent).toHaveLength(MOST_FINDINGS + 1);
  expect(sent.at(-1)?.message).toMatch(said);
});

test.each([
  ['1', '1 more problem of this entry is not listed.'],
  ['2', '2 more problems of this entry are not listed.'],
])('%s more than an entry lists', (more, said) => {
  expect(tooMuch.words({ code: 'too-many', args: { more } }, new Say()).what).toBe(said);
});
