/** A rule, where a plan accepts what it finds or sets its severity. */
import { ruleNamed } from '../../rules/registry.ts';
import { code, paragraphs } from './markdown.ts';

/** `set`: the severity that the plan gives it, as written. */
export function ruleHover(name: string, set?: string): string | null {
  const rule = ruleNamed(name);
  if (!rule) return null;
  const { when, why, remedy } = rule.docs;
  const here = set === undefined ? '' : `, here ${code(set)}`;
  return paragraphs(
    `**${rule.name}** · ${rule.severity}${here}`,
    `Found when ${when}`,
    why,
    remedy,
  );
}
