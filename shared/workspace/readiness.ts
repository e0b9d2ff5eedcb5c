/** What each shot of a plan has come to. */
import { isOf, nameOf, plainId } from '../plan/entry-id.ts';
import type { ShotSummary } from '../rules/plan-rule.ts';
import { type Readiness, readinessOf } from '../rules/readiness.ts';
import type { Finding, Severity } from '../rules/rule.ts';

interface PlanParts {
  readonly shots: readonly string[];
  /** Of the whole plan. */
  readonly findings: readonly Finding[];
  /** Of the shots whose own text has no errors. */
  readonly summaries: readonly ShotSummary[];
  readonly partly: boolean;
}

/** By name, in the order of `shots`. */
export function shotsReadiness(plan: PlanParts): ReadonlyMap<string, Readiness> {
  const { shots, findings, summaries, partly } = plan;
  const severities = new Map<string, Set<Severity>>();
  for (const finding of findings) {
    const name = finding.shot ?? shotAt(finding);
    if (name === undefined) continue;
    severities.set(name, (severities.get(name) ?? new Set()).add(finding.severity));
  }
  const lackOf = new Map(
    summaries.map(({ shot, unknown, checks }) => [
      shot,
      { unknown, missing: checks.missing.length, partly },
    ]),
  );
  return new Map(
    shots.map((name) => [
      name,
      readinessOf(severities.get(name) ?? new Set(), lackOf.get(name) ?? null),
    ]),
  );
}

/** The shot that a finding about a text stands in. */
const shotAt = ({ at }: Finding): string | undefined =>
  isOf('shots', at.entry) ? nameOf('shots', plainId(at.entry)) : undefined;
