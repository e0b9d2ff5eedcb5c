/**
 * Severities as set by the plan or a file that it uses. They are part of the plan, so that every
 * reader sees the same. The nearest file decides.
 */
import type { PlanReader } from '../figures/reader.ts';
import { ifKnown, isKnown } from '../plan/field.ts';
import type { FileId } from '../plan/place.ts';
import { lowered } from '../rules/certainty.ts';
import type { Finding, Severity } from '../rules/rule.ts';
import { ruleFailed } from '../rules/rule-failed.ts';

/** By rule, with the place that sets it. */
export function severitiesIn(
  files: readonly FileId[],
  readerOf: (file: FileId) => PlanReader,
): ReadonlyMap<string, Severity> {
  const set = new Map<string, Severity>();
  for (const file of files)
    for (const [rule, severity] of ifKnown(readerOf(file).plan('severity')) ?? [])
      if (isKnown(severity) && !set.has(rule)) set.set(rule, severity.value);
  // A plan can't change the severity of a failed rule.
  set.delete(ruleFailed.name);
  return set;
}

export function withSeverities(
  findings: readonly Finding[],
  files: readonly FileId[],
  readerOf: (file: FileId) => PlanReader,
): readonly Finding[] {
  const set = severitiesIn(files, readerOf);
  if (set.size === 0) return findings;
  return findings.map((finding) => {
    const said = set.get(finding.rule);
    const severity = said && finding.unsure ? lowered(said) : said;
    return severity === undefined || severity === finding.severity
      ? finding
      : { ...finding, severity };
  });
}
