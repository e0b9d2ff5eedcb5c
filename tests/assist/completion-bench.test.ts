/** Rows that are offered for the benches of lights, bodies, converters and close-up lenses. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { offeredAt, written } from './support/completing.ts';

/** The example with `more` after a line of it, where the caret's mark stands. */
function marked(line: string, more: string): string {
  const at = EXAMPLE_PLAN.indexOf(line);
  expect(at).toBeGreaterThan(0);
  const end = at + line.length;
  return `${EXAMPLE_PLAN.slice(0, end)}${more}${EXAMPLE_PLAN.slice(end)}`;
}

const STRIP = '    luminance: 12000 cd/m2\n';
const CASES: readonly (readonly [what: string, text: string, row: RegExp])[] = [
  // From afar E = L·A/d² (inverse-square law), 3,840 lx here; so near a face gives less.
  [
    'a light with a luminance',
    marked(STRIP, '    |\n'),
    /bench:\n {6}- \{ distance: 300 mm, illuminance: 3[2-7]\d0 lx \}/,
  ],
  // Twice as far a small face gives a quarter (inverse-square law), and a large one somewhat more.
  [
    'a light with a row: farther away',
    marked(STRIP, '    bench: [{ distance: 1 m, illuminance: 340 lx }, |]\n'),
    /, \{ distance: 2000 mm, illuminance: 8[5-9](\.\d)? lx \}\]/,
  ],
  [
    'a body: its lowest setting, as the plan calculates it',
    marked('      mass: 0.76 kg\n', '      |\n'),
    /bench:\n {8}- \{ set: 100, found: 0 stops over \}/,
  ],
  [
    'a body with a row: another setting',
    marked('      mass: 0.76 kg\n', '      bench: [{ set: 100, found: 0.3 stops under }, |]\n'),
    /, \{ set: 3200, found: 0 stops over \}/,
  ],
];

describe('a row of a bench', () => {
  it.each(CASES)('of %s', (_, text, row) => {
    const { items } = offeredAt(text);
    const item = items.find(({ label }) => label === 'bench') ?? items[0]!;
    const whole = written(text, item.label);
    expect(whole).toMatch(row);
    const found = coreWith(whole).findings(PLAN);
    expect(found.filter(({ rule }) => /^bench-|syntax|-key$|unit/.test(rule))).toEqual([]);
  });

  it('of a converter follows its factor', () => {
    const flow = 'loss: 0.1 stops, mass: 0.3 kg }';
    const whole = written(EXAMPLE_PLAN.replace(flow, `${flow.slice(0, -2)}, | }`), 'bench');
    expect(whole).toContain('{ field: 40 mm, field-without: 80 mm }');
    expect(
      coreWith(whole)
        .findings(PLAN)
        .filter(({ rule }) => /^bench-/.test(rule)),
    ).toEqual([]);
  });

  it('of a close-up lens is in focus at its focal length', () => {
    const kit = EXAMPLE_PLAN.replace(
      '\nrigs:',
      '  close-up-lenses:\n    near: { power: 2 dpt, length: 10 mm, | }\n\nrigs:',
    );
    // 1/f in metres is the power in dioptres (definition).
    expect(written(kit, 'bench')).toContain('{ working-distance: 490 mm }');
  });
});
