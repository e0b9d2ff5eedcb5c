/** A rule, where a plan accepts what it finds or sets its severity. */
import { ruleNamed } from '../../rules/registry.ts';
import { paragraphs } from './markdown.ts';

export function ruleHover(name: string): string | null {
  const rule = ruleNamed(name);
  if (!rule) return null;
  const { when, why, remedy } = rule.docs;
  return paragraphs(`**${rule.name}** · ${rule.severity}`, `Found when ${when}`, why, remedy);
}
