/** Values that are allowed and that nobody should have: no rule breaks, and no figure is endless. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { coreWith, PLAN } from '../support/plans.ts';

const SLICK = readFileSync('samples/slick.shootplan.yaml', 'utf8');

test.each([
  ['a mirror that reflects nothing', SLICK.replace(/\n +film: .*/, '\n    reflectance: 0 %')],
  [
    'a lens that lets nothing through',
    SLICK.replace(/loss: [\d.]+ stops/, 'loss: 999999999 stops'),
  ],
])('%s', (_, text) => {
  expect(text).not.toBe(SLICK);
  const core = coreWith(text);
  const said = core.findings(PLAN).map(({ what, why }) => `${what} ${why}`);
  expect(said.filter((words) => /broke down|Infinity|NaN/.test(words))).toEqual([]);
  // JSON has no number for what is endless, and would say null.
  const endless: string[] = [];
  JSON.stringify([...core.figures(PLAN)], (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) endless.push(key);
    return value;
  });
  expect(endless).toEqual([]);
});
