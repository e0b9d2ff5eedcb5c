/**
 * What a fix has to keep, judged from the texts alone by a core apart from the one that offers it:
 * in the long run by a fresh one each time, else by one that reads the texts one after another.
 */
import { expect } from 'vitest';
import { fixAll } from '../../server/handlers/fix-all.ts';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../../shared/api/located.ts';
import { TEXT_RULES } from '../../shared/rules/registry.ts';
import { applied, coreWith, given, PLAN } from './plans.ts';

const ofText = new Set(TEXT_RULES.map(({ name }) => name));
const RANK = { error: 3, warning: 2, note: 1, hint: 0 } as const;

type Findings = readonly LocatedFinding[];

let judge: Core | undefined;
function findingsIn(text: string): Findings {
  if (process.env.LAMELLA_LONG === '1') return coreWith(text).findings(PLAN);
  judge = judge ? given(judge, text) : coreWith(text);
  return judge.findings(PLAN);
}

/** Findings alike: the same rule of the same shot, at the same line's text. */
function counted(text: string, findings: Findings): Map<string, LocatedFinding[]> {
  const lines = text.split('\n');
  const groups = new Map<string, LocatedFinding[]>();
  for (const finding of findings) {
    const line = lines[finding.range.start.line] ?? '';
    const key = [finding.rule, finding.shot ?? '', /^\s*[\w-]*/.exec(line)?.[0]].join('|');
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  return groups;
}

/**
 * The gravest of each kind of finding that `after` has more of than `before`, or graver. With
 * `ofTextOnly` what is seen only now that the text can be read is nothing that the edit brought.
 */
export function brought(
  [text, before]: readonly [string, Findings],
  [mended, after]: readonly [string, Findings],
  ofTextOnly: boolean,
): Findings {
  const then = counted(text, before);
  return [...counted(mended, after)].flatMap(([key, now]) => {
    const was = then.get(key) ?? [];
    if (ofTextOnly && !ofText.has(now[0]!.rule)) return [];
    // What could be known better is no fault of a plan in which another finding is only probable now.
    if (now.every(({ rule, what }) => rule === 'not-known' && /only probable/.test(what)))
      return [];
    const isGraver = now.some(
      (one, index) => RANK[one.severity] > RANK[was[index]?.severity ?? one.severity],
    );
    if (now.length <= was.length && !isGraver) return [];
    return now.reduce((a, b) => (RANK[b.severity] > RANK[a.severity] ? b : a));
  });
}

/** The fix takes its finding away, adds no error, and names in its price whatever else it adds. */
export function judgeFix(
  text: string,
  before: Findings,
  { rule, severity, what }: LocatedFinding,
  fix: LocatedFix,
): void {
  const said = `${rule} “${fix.title}” (${fix.sideEffects ?? 'no price'})`;
  const mended = applied(text, fix.edits);
  const after = findingsIn(mended);
  const count = (findings: Findings) =>
    findings.filter((other) => other.rule === rule && other.what === what).length;
  expect(count(after), `${said}: still there`).toBeLessThan(count(before));
  const unlocks = ofText.has(rule) && severity === 'error';
  for (const worst of brought([text, before], [mended, after], unlocks)) {
    const adds = `${said}: adds ${worst.rule}: ${worst.what}`;
    expect(worst.severity, adds).not.toBe('error');
    // What a fix writes is spelt the usual way.
    expect(worst.rule, adds).not.toBe('usual-spelling');
    if (worst.severity !== 'hint') expect(fix.sideEffects, adds).toBeDefined();
  }
}

/** All that has no price, applied at once: it brings nothing but hints, as each of it alone. */
export function judgeFixAll(text: string, core: Core): boolean {
  const edits = fixAll(core, PLAN);
  if (edits.length === 0) return false;
  const before = core.findings(PLAN);
  const mended = applied(text, edits);
  const after = findingsIn(mended);
  const unlocks = before.some(
    (finding) => finding.severity === 'error' && ofText.has(finding.rule),
  );
  const news = brought([text, before], [mended, after], unlocks);
  const loud = news.filter(({ severity }) => severity !== 'hint');
  expect(loud.map(({ rule, what }) => `fix all adds ${rule}: ${what}`)).toEqual([]);
  return true;
}
