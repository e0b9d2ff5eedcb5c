/** All rules that look at one shot, and what becomes of their findings. */
import { withoutSilenced } from '../rules/precedence.ts';
import { SHOT_RULES } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import { ruleFailed } from '../rules/rule-failed.ts';
import type { ShotRule, ShotView } from '../rules/shot-rule.ts';

/** A rule that throws becomes a finding that names it, and the others go on. */
export function runShotRules(
  view: ShotView,
  rules: readonly ShotRule<unknown>[] = SHOT_RULES,
): readonly Finding[] {
  const { at, shot } = view.bench;
  const found = rules.flatMap((rule): Finding[] => {
    try {
      return rule.check(view).map((observation) => ({
        rule: rule.name,
        severity: observation.severity ?? rule.severity,
        at: observation.at,
        shot,
        facts: observation.facts,
        related: observation.related ?? [],
      }));
    } catch (error) {
      return [
        {
          rule: ruleFailed.name,
          severity: ruleFailed.severity,
          at: { ...at, part: 'key' },
          shot,
          facts: { rule: rule.name, error: error instanceof Error ? error.message : String(error) },
          related: [],
        },
      ];
    }
  });
  return withoutSilenced(found);
}
