/** Rules that look at the whole plan, by the summaries of its shots. */

import type { PlanView } from '../rules/plan-rule.ts';
import { PLAN_RULES } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import { failedRule } from './shot-findings.ts';

export function runPlanRules(view: PlanView): readonly Finding[] {
  return PLAN_RULES.flatMap((rule): Finding[] => {
    try {
      return rule.check(view).map((observation) => ({
        rule: rule.name,
        severity: observation.severity ?? rule.severity,
        at: observation.at,
        facts: observation.facts,
        related: observation.related ?? [],
      }));
    } catch (error) {
      return [failedRule(rule.name, error, { file: view.file, entry: '', path: [] })];
    }
  });
}
