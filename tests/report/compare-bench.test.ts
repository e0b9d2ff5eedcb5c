/** What a new row of a bench changes, in every shot with its lens. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { Say } from '../../shared/say/say.ts';
import { MEASURED_PLAN } from '../support/measured-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';

const compare = (before: string, after: string) =>
  comparePlans(coreWith(before).compared(PLAN), coreWith(after).compared(PLAN));

const MOTHS = readFileSync(
  new URL('../../samples/moth-wings.shootplan.yaml', import.meta.url),
  'utf8',
);

it('every shot with the lens has new bounds, most of them narrower', () => {
  const without = MOTHS.replace(/\n.*ring: infinity, field.*(?=\n)/, '');
  expect(without.length).toBeLessThan(MOTHS.length);
  const comparison = compare(without, MOTHS);
  expect(comparison.shots.map(({ shot }) => shot)).toEqual(['whole-moth', 'one-wing', 'eye']);
  for (const { shot, figures } of comparison.shots) {
    const light = figures.find(({ figure }) => figure === 'effectiveFNumber')!;
    const width = (ends: unknown) => {
      const [low, high] = ends as readonly [number, number];
      return high - low;
    };
    expect(width(light.bounds!.after), shot).toBeLessThan(0.7 * width(light.bounds!.before));
  }
  const text = terminalText(comparisonDocument(comparison, new Say(), 'terminal'), false);
  expect(text).toContain('kit/lenses/long-200\n  bench.3.effective-f-number  not set → 9.8\n');
  expect(text).toMatch(/whole-moth\n {2}results:\n {4}effective f-number .* → .*, narrower\n/);
});

it('shots with other lenses are not told', () => {
  const after = MEASURED_PLAN.replace('          field: 67 mm', '          field: 66 mm');
  expect(after).not.toBe(MEASURED_PLAN);
  expect(compare(MEASURED_PLAN, after).shots.map(({ shot }) => shot)).toEqual(['skin']);
});
