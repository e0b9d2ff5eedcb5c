/**
 * Accepted findings: in the shot or the plan, with a reason and, where they have a size, up to a
 * limit. Above its limit a finding is reported again and says so.
 */
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import type { Allowance } from '../plan/generated/types.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { allowUnused } from './allow-unused.ts';
import type { Finding, RuleCore } from './rule.ts';

export type Allowances = Field<ReadonlyMap<string, Field<Allowance>>>;

export interface Accepted {
  readonly findings: readonly Finding[];
  /** Rules of which the plan's own acceptances accepted a finding. */
  readonly byPlan: readonly string[];
}

/**
 * @param ruleNamed looks a rule up, for the size of its findings
 */
export function accept(
  findings: readonly Finding[],
  shot: { readonly name: string; readonly allow: Allowances },
  plan: Allowances,
  ruleNamed: (name: string) => RuleCore<unknown> | undefined,
): Accepted {
  const own = ifKnown(shot.allow);
  const shared = ifKnown(plan);
  if (!own && !shared) return { findings, byPlan: [] };
  const used = new Set<string>();
  const byPlan = new Set<string>();
  const kept: Finding[] = [];
  for (const finding of findings) {
    const ownField = own?.get(finding.rule);
    const allowance = ownField ?? shared?.get(finding.rule);
    if (!allowance) {
      kept.push(finding);
      continue;
    }
    (ownField ? used : byPlan).add(finding.rule);
    const past = pastBound(finding, allowance, ruleNamed(finding.rule));
    if (past) kept.push({ ...finding, related: [past, ...finding.related] });
  }
  for (const [rule, field] of own ?? []) {
    if (used.has(rule) || !isKnown(field) || ruleNamed(rule)?.onRequest) continue;
    kept.push({
      rule: allowUnused.name,
      severity: allowUnused.severity,
      at: { ...field.at, part: 'key' },
      shot: shot.name,
      facts: { rule, owner: shot.name },
      related: [],
    });
  }
  return { findings: kept, byPlan: [...byPlan] };
}

/** The place of the limit that a finding exceeds; undefined if the finding is accepted. */
function pastBound(
  finding: Finding,
  allowance: Field<Allowance>,
  rule: RuleCore<unknown> | undefined,
): { at: Place; words: string } | undefined {
  // An acceptance that can't be read has its own finding and accepts nothing.
  if (!isKnown(allowance))
    return { at: allowance.at, words: message`an acceptance that can't be read` };
  const upTo = allowance.value['up-to'];
  if (upTo.state === 'missing') return undefined;
  const size = rule?.size?.(finding.facts);
  const past = (words: string) => ({ at: upTo.at, words });
  if (!isKnown(upTo)) return past(message`accepted only up to this`);
  if (!size) return past(message`accepted only up to this, but the finding has no size`);
  if (size.kind !== upTo.value.kind)
    return past(message`accepted only up to this, which is in the wrong unit`);
  return size.value <= upTo.value.value ? undefined : past(message`accepted only up to this`);
}
