import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

/** Hints that say what is so, wherever it is so; no example is about them but their own. */
const BACKGROUND = new Set(['aperture-behind-converter', 'usual-spelling', 'unused-name']);

describe('the plan that examples start from', () => {
  it('has nothing wrong', () => {
    const loud = findingsOf(EXAMPLE_PLAN).filter(({ severity }) => severity !== 'hint');
    expect(loud).toEqual([]);
  });
});

describe.each(ALL_RULES.map((rule) => [rule.name, rule] as const))('%s', (name, rule) => {
  it.each(rule.docs.bad)('bad: $says', ({ change }) => {
    const core = coreWith(changed(EXAMPLE_PLAN, change));
    const findings = core
      .findings(PLAN)
      .filter((finding) => finding.rule === name || !BACKGROUND.has(finding.rule))
      .map(({ rule: found, what }) => `${found}: ${what}`);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatch(new RegExp(`^${name}: .*[.?]$`));
  });

  it.each(rule.docs.good)('good: $says', ({ change }) => {
    const findings = findingsOf(changed(EXAMPLE_PLAN, change));
    expect(findings.filter((finding) => finding.rule === name)).toEqual([]);
  });

  it('documents itself in sentences', () => {
    for (const text of [rule.docs.when, rule.docs.why, rule.docs.remedy])
      expect(text).toMatch(/^.{10,}[.]$/s);
  });
});
