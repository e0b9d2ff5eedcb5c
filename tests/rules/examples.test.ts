import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { laws } from '../support/each.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

/** Hints that say what is so, wherever it is so; no example is about them but their own. */
const BACKGROUND = new Set(['effective-aperture', 'usual-spelling', 'unused-name']);

describe('the plan that examples start from', () => {
  it('has nothing wrong', () => {
    const loud = findingsOf(EXAMPLE_PLAN).filter(({ severity }) => severity !== 'hint');
    expect(loud).toEqual([]);
  });
});

laws(
  ALL_RULES,
  ({ name }) => name,
  (rule, law) => {
    const { name } = rule;
    for (const { says, change } of rule.docs.bad)
      law(
        'every bad example has its one finding',
        () => {
          const core = coreWith(changed(EXAMPLE_PLAN, change));
          const findings = core
            .findings(PLAN)
            .filter((finding) => finding.rule === name || !BACKGROUND.has(finding.rule))
            .map(({ rule: found, what }) => `${found}: ${what}`);
          expect(findings).toHaveLength(1);
          expect(findings[0]).toMatch(new RegExp(`^${name}: .*[.?]$`));
        },
        says,
      );

    for (const { says, change } of rule.docs.good)
      law(
        'no good example has it',
        () => {
          const findings = findingsOf(changed(EXAMPLE_PLAN, change));
          expect(findings.filter((finding) => finding.rule === name)).toEqual([]);
        },
        says,
      );

    law('documents itself in sentences', () => {
      for (const text of [rule.docs.when, rule.docs.why, rule.docs.remedy])
        expect(text).toMatch(/^.{10,}[.]$/s);
    });
  },
);
