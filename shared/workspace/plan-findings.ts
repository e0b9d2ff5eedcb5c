/**
 * Runs the rules about the whole plan on the summaries of its shots. Findings that the plan's own
 * `allow` accepts are left out.
 */
import { WHOLE_FILE } from '../plan/entry-id.ts';
import { type Allowances, accept } from '../rules/acceptance.ts';
import { allowUnused } from '../rules/allow-unused.ts';
import type { PlanRule, PlanView } from '../rules/plan-rule.ts';
import { PLAN_RULES, ruleNamed } from '../rules/registry.ts';
import { type Finding, relatedIn } from '../rules/rule.ts';
import { failedRule } from './shot-findings.ts';

/** Findings about the plan as a whole, without accepted ones. */
export function findInPlan(view: PlanView, allow: Allowances): readonly Finding[] {
  // Unused acceptances are known only after every other rule has run.
  const others = PLAN_RULES.filter(({ name }) => name !== allowUnused.name);
  const none: Allowances = {
    state: 'missing',
    at: { file: view.file, entry: WHOLE_FILE, path: [] },
  };
  const about = { name: 'the plan', allow: none };
  const { findings, byPlan } = accept(runRules(others, view), about, allow, ruleNamed);
  return [...findings, ...runRules([allowUnused], { ...view, accepted: byPlan })];
}

const runRules = (rules: readonly PlanRule<unknown>[], view: PlanView): readonly Finding[] =>
  rules.flatMap((rule): Finding[] => {
    try {
      return rule.check(view).map((observation) => ({
        rule: rule.name,
        severity: observation.severity ?? rule.severity,
        at: observation.at,
        facts: observation.facts,
        related: relatedIn(observation),
      }));
    } catch (error) {
      return [failedRule(rule.name, error, { file: view.file, entry: WHOLE_FILE, path: [] })];
    }
  });
