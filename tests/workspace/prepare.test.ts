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

  it('works in slices too on what an edit of a lens changes, and on nothing else', () => {
    const text = planOf(70);
    const core = coreWith(text);
    core.findings(PLAN);
    const edited = (from: string, to: string): number => {
      const line = core
        .text(PLAN)!
        .split('\n')
        .findIndex((each) => each.includes(from));
      const start = { line, character: core.line(PLAN, line).indexOf(from) };
      core.edit(PLAN, { start, end: { ...start, character: start.character + from.length } }, to);
      let asked = 0;
      while (!core.prepare(PLAN, () => ++asked % 10 === 0)) {}
      return asked;
    };
    const whole = edited('focal-length: 50 mm', 'focal-length: 51 mm');
    expect(whole).toBeGreaterThan(70);
    core.findings(PLAN);
    expect(edited('iso: 3200', 'iso: 2500')).toBeLessThan(whole);
    expect(core.findings(PLAN)).toEqual(coreWith(core.text(PLAN)!).findings(PLAN));
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
