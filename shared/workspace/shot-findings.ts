/** Runs all rules about one shot. */
import type { Place } from '../plan/place.ts';
import { type Accepted, type Allowances, accept } from '../rules/acceptance.ts';
import { withoutSilenced } from '../rules/precedence.ts';
import { ruleNamed, SHOT_RULES } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import { ruleFailed } from '../rules/rule-failed.ts';
import type { ShotRule, ShotView } from '../rules/shot-rule.ts';

/** The findings, without accepted ones and without those that another's cause explains. */
export function findInShot(view: ShotView, planAllow: Allowances): Accepted {
  const { shot, fields } = view.bench;
  const own = { name: shot, allow: fields.allow };
  const { findings, byPlan } = accept(runShotRules(view), own, planAllow, ruleNamed);
  return { findings: withoutSilenced(findings), byPlan };
}

/** A rule that throws becomes a finding that names it, and the others go on. */
export function runShotRules(
  view: ShotView,
  rules: readonly ShotRule<unknown>[] = SHOT_RULES,
): readonly Finding[] {
  const { at, shot } = view.bench;
  const found: Finding[] = [];
  for (const rule of rules)
    try {
      for (const observation of rule.check(view))
        found.push({
          rule: rule.name,
          severity: observation.severity ?? rule.severity,
          at: observation.at,
          shot,
          facts: observation.facts,
          related: observation.related ?? [],
        });
    } catch (error) {
      found.push(failedRule(rule.name, error, { ...at, part: 'key' }, shot));
    }
  return found;
}

export const failedRule = (rule: string, error: unknown, at: Place, shot?: string): Finding => ({
  rule: ruleFailed.name,
  severity: ruleFailed.severity,
  at,
  ...(shot !== undefined && { shot }),
  facts: { rule, error: error instanceof Error ? error.message : String(error) },
  related: [],
});
