/**
 * Plans with thousands of one thing: each took minutes, or all memory, while work grew with the
 * square of their number. None is judged by a clock; one that never ends is cut off by the runner.
 */
import { expect, test } from 'vitest';
import { coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

const LINE = '    aperture: f/8\n';

const inSecond = (lines: string): string => {
  const at = SOUND.indexOf(LINE, SOUND.indexOf('  second:'));
  return SOUND.slice(0, at) + lines + SOUND.slice(at + LINE.length);
};

const many = (count: number, make: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => make(index)).join('');

test.each([
  ['sections that are none', many(9000, (index) => `a${index}: 1\n`), 9000],
  ['sections of one name', many(8000, () => 'shots:\n'), 8000],
  ['keys that are none', inSecond(many(5000, (index) => `    k${index}: 1\n`)), 5000],
  [
    'keys that are none, in braces',
    inSecond(`    take: { ${many(5000, (index) => `k${index}: 1, `)} }\n`),
    5000,
  ],
  ['bare carriage returns', '\r'.repeat(90_000), 1],
])('thousands of %s are told, and fixes for them found', (_, text, least) => {
  const core = coreWith(text);
  const found = core.findings(PLAN);
  expect(found.length).toBeGreaterThanOrEqual(least);
  for (const finding of found.slice(0, 2)) core.fixesOf(finding);
  expect(core.text(PLAN)).toBe(text);
});
