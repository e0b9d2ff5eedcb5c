/** A rule, where a plan accepts what it finds or sets its severity. */
import { ruleNamed } from '../../rules/registry.ts';
import { inLanguage, message } from '../../words/message.ts';
import { code, paragraphs } from './markdown.ts';

/** `set`: the severity that the plan gives it, as written. */
export function ruleHover(name: string, set?: string): string | null {
  const rule = ruleNamed(name);
  if (!rule) return null;
  const { when, why, remedy } = rule.docs;
  const here = set === undefined ? '' : message`, here ${code(set)}`;
  return paragraphs(
    `**${rule.name}** · ${rule.severity}${here}`,
    message`Reported when ${inLanguage(when)}`,
    inLanguage(why),
    inLanguage(remedy),
  );
}
