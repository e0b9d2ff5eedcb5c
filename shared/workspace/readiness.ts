/** What each shot of a plan has come to, and the count of those that are clear. */
import type { PlanState } from '../api/facade.ts';
import { dayJson } from '../figures/day-contract.ts';
import { isOf, nameOf, plainId } from '../plan/entry-id.ts';
import type { FileId } from '../plan/place.ts';
import type { ShotSummary } from '../rules/plan-rule.ts';
import { type Readiness, readinessOf } from '../rules/readiness.ts';
import type { Finding, Severity } from '../rules/rule.ts';
import type { Analysis } from './analysis.ts';
import { hasAllTakes, takesToGo } from './takes.ts';

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

export function planState(analysis: Analysis, file: FileId): PlanState {
  const all = [...analysis.readiness(file).values()];
  const errors = analysis
    .findings(file)
    .filter(({ severity, at }) => severity === 'error' && at.file === file).length;
  const toGo = takesToGo(analysis, file);
  return {
    ready: all.filter(({ state }) => state === 'ready').length,
    shots: all.length,
    ...(errors > 0 && { errors }),
    ...(toGo !== undefined && { takesToGo: toGo }),
    ...dayState(analysis, file),
  };
}

/** How far the plan's day has come. */
function dayState(analysis: Analysis, file: FileId): Pick<PlanState, 'day'> {
  const day = dayJson(analysis.day(file));
  if (!day?.date) return {};
  const kept = day.shots.filter(({ shot }) => hasAllTakes(analysis, file, shot)).length;
  return { day: { date: day.date, shots: day.shots.length, kept } };
}
