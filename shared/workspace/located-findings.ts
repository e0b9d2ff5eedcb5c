/** Findings made ready to be shown: places into ranges, facts into words. */
import type { LocatedFinding, LocatedRelated } from '../assist/located.ts';
import type { FileId } from '../plan/place.ts';
import { ruleNamed } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import type { Say } from '../rules/say.ts';
import type { Locator } from './locate.ts';
import type { TextFinding } from './text-findings.ts';

/** Longest first sentence, so that a list of findings can be read in a narrow window. */
const LONGEST_SENTENCE = 100;

export function locateFinding(finding: Finding, locator: Locator, say: Say): LocatedFinding {
  const rule = ruleNamed(finding.rule);
  const { what, why = '' } = rule?.words(finding.facts, say) ?? { what: `${finding.rule}.` };
  const numbers = rule?.numbers?.(finding.facts);
  const { span } = finding as TextFinding;
  const range = span
    ? locator.rangeIn(finding.at.file, { chunk: finding.at.entry, span })
    : locator.rangeOf(finding.at);
  return {
    rule: finding.rule,
    severity: finding.severity,
    file: finding.at.file,
    range,
    what: clipped(what),
    why,
    ...(finding.shot !== undefined && { shot: finding.shot }),
    ...(numbers && { numbers }),
    related: relatedOf(finding, locator),
  };
}

function relatedOf(finding: Finding, locator: Locator): LocatedRelated[] {
  const places = finding.related.map(({ at, words }) => ({
    file: at.file,
    range: locator.rangeOf(at),
    words,
  }));
  const { relatedSpan } = finding as TextFinding;
  if (!relatedSpan) return places;
  const { file, entry } = finding.at;
  const range = locator.rangeIn(file, { chunk: entry, span: relatedSpan });
  return [...places, { file, range, words: 'the first one' }];
}

/** Names and values from the plan can be long; the sentence keeps its beginning. */
const clipped = (sentence: string): string =>
  sentence.length <= LONGEST_SENTENCE ? sentence : `${sentence.slice(0, LONGEST_SENTENCE - 1)}…`;

/** In the order of the text. */
export const byPosition = (a: LocatedFinding, b: LocatedFinding): number =>
  a.range.start.line - b.range.start.line ||
  a.range.start.character - b.range.start.character ||
  (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0);

/** One finding that several plans cause in a shared file stands there once. */
export function withoutDoubles(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const { file, entry, path } = finding.at;
    const key = JSON.stringify([finding.rule, file, entry, path, finding.shot, finding.facts]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Those of `findings` that stand in `file`. */
export const standingIn = (file: FileId, findings: readonly Finding[]): readonly Finding[] =>
  findings.filter((finding) => finding.at.file === file);
