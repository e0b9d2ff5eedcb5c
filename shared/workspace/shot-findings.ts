/** All rules that look at one shot, and what becomes of their findings. */
import { DECLARATIONS } from '../figures/catalogue/catalogue.ts';
import type { UncertainShot } from '../figures/uncertain.ts';
import type { Place } from '../plan/place.ts';
import { type Accepted, type Allowances, accept } from '../rules/acceptance.ts';
import { type BetterMode, betterMode } from '../rules/better-mode.ts';
import { lowered, unsureOf } from '../rules/certainty.ts';
import { checkMissing } from '../rules/check-missing.ts';
import { isJudged, missingChecks } from '../rules/checks-called-for.ts';
import { PRECEDENCE, withoutSilenced } from '../rules/precedence.ts';
import { ruleNamed, SHOT_RULES } from '../rules/registry.ts';
import { type Finding, relatedIn, SEVERITIES, type Severity } from '../rules/rule.ts';
import { ruleFailed } from '../rules/rule-failed.ts';
import type { ShotRule, ShotView } from '../rules/shot-rule.ts';

export interface FoundInShot extends Accepted {
  /** It lacks checks and nothing accepts that: the plan says so, once for all its shots. */
  readonly lacksChecks: boolean;
  /** What the plan says once for all shots with the same. */
  readonly betterMode: Finding<BetterMode> | null;
  /** What another's cause explains. */
  readonly silenced: readonly Finding[];
}

/** What was found, less what is accepted, less what another's cause explains. */
export function findInShot(view: ShotView, planAllow: Allowances): FoundInShot {
  const { shot, fields } = view.bench;
  const own = { name: shot, allow: fields.allow };
  const found = [...runShotRules(view), ...lackOfChecks(view)];
  const { findings, byPlan } = accept(found, own, planAllow, ruleNamed);
  const others = findings.filter(({ rule }) => rule !== checkMissing.name);
  const spoken = withoutSilenced(others);
  const isBetterMode = (one: Finding): one is Finding<BetterMode> => one.rule === betterMode.name;
  return {
    findings: spoken.filter((one) => !isBetterMode(one)),
    byPlan,
    lacksChecks: others.length < findings.length,
    betterMode: spoken.find(isBetterMode) ?? null,
    silenced: others.filter((one) => !spoken.includes(one)),
  };
}

/** The rules that decide by a figure: no other finding depends on what is uncertain. */
const BY_FIGURES = new Set([...DECLARATIONS.values()].flatMap(({ rules = [] }) => rules));

/** Whether anything uncertain can have a say in it. */
export const dependsOnFigures = ({ rule }: Finding): boolean => BY_FIGURES.has(rule);

const isMoreSevere = (one: Severity, other: Severity): boolean =>
  SEVERITIES.indexOf(one) < SEVERITIES.indexOf(other);

/**
 * The finding with how sure it is. One that is only probable speaks for those that it silences too:
 * it is no milder than they would be, or a shot that fails for sure would pass with a note.
 */
export function withCertainty(
  finding: Finding,
  uncertain: UncertainShot,
  silenced: readonly Finding[] = [],
): Finding {
  const rule = dependsOnFigures(finding) && SHOT_RULES.find(({ name }) => name === finding.rule);
  const unsure = rule && unsureOf(rule, finding, uncertain);
  if (!unsure) return finding;
  const milder = lowered(finding.severity);
  const isSpokenFor = silenced.some(
    (other) =>
      PRECEDENCE[finding.rule]?.includes(other.rule) &&
      isMoreSevere(withCertainty(other, uncertain).severity, milder),
  );
  return { ...finding, severity: isSpokenFor ? finding.severity : milder, unsure };
}

/** Stands for the shot's part of the plan's finding, so that the shot or the plan may accept it. */
function lackOfChecks({ bench }: ShotView): readonly Finding[] {
  if (!isJudged(bench) || missingChecks(bench).length === 0) return [];
  const { name: rule, severity } = checkMissing;
  const { at, shot } = bench;
  return [{ rule, severity, at, shot, facts: { shots: [] }, related: [] }];
}

/** A rule that throws becomes a finding that names it, and the others go on. */
export function runShotRules(
  view: ShotView,
  rules: readonly Pick<ShotRule<unknown>, 'name' | 'severity' | 'check'>[] = [
    ...SHOT_RULES,
    betterMode,
  ],
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
          related: relatedIn(observation),
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
