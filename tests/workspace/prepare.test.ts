import { describe, expect, it } from 'vitest';
import { planOf } from '../bench/plan-of.ts';
import { coreWith, PLAN } from '../support/plans.ts';

describe('prepare', () => {
  it('works ahead in slices, and findings are then what they are without', () => {
    const text = planOf(50);
    const core = coreWith(text);
    let asked = 0;
    let slices = 0;
    while (!core.prepare(PLAN, () => ++asked % 10 === 0)) slices++;
    expect(slices).toBeGreaterThan(4);
    expect(core.prepare(PLAN, () => true)).toBe(true);
    expect(core.findings(PLAN)).toEqual(coreWith(text).findings(PLAN));
  });

  it('starts over where entries have come or gone', () => {
    const core = coreWith(planOf(5));
    expect(core.prepare(PLAN, () => false)).toBe(true);
    const at = { line: 0, character: 0 };
    core.edit(PLAN, { start: at, end: at }, 'about: more\n');
    expect(core.prepare(PLAN, () => true)).toBe(false);
    expect(core.prepare(PLAN, () => false)).toBe(true);
  });
});
