/**
 * Every fix that is offered does what it says: applied, its finding is gone, no error is new, and
 * whatever is new or worse is named in its price. Judged here from the texts alone, by analyses
 * from nothing, apart from the code that offers them.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import type { LocatedFinding } from '../../shared/assist/located.ts';
import { ALL_RULES, TEXT_RULES } from '../../shared/rules/registry.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';

const RUNS = manyRuns(200);

const ofText = new Set(TEXT_RULES.map(({ name }) => name));
const RANK = { error: 3, warning: 2, information: 1, hint: 0 } as const;

const offered = new Map<string, number>();

/** Findings alike: the same rule of the same shot, at the same line's text. */
function counted(text: string, findings: readonly LocatedFinding[]): Map<string, LocatedFinding[]> {
  const lines = text.split('\n');
  const groups = new Map<string, LocatedFinding[]>();
  for (const finding of findings) {
    const line = lines[finding.range.start.line] ?? '';
    const key = [finding.rule, finding.shot ?? '', /^\s*[\w-]*/.exec(line)?.[0]].join('|');
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  return groups;
}

describe('fixes', () => {
  it('do what they say and name their price', () => {
    fc.assert(
      fc.property(randomPlan(), ({ text, change }) => {
        const core = coreWith(text);
        const before = core.findings(PLAN);
        for (const finding of before) {
          for (const fix of core.fixesOf(finding)) {
            offered.set(finding.rule, (offered.get(finding.rule) ?? 0) + 1);
            const mended = applied(text, fix.edits);
            const after = coreWith(mended).findings(PLAN);
            const what = `${JSON.stringify(change)}: ${finding.rule} “${fix.title}” (${fix.price ?? 'no price'})`;
            const isText = ofText.has(finding.rule);
            const count = (findings: readonly LocatedFinding[]) =>
              findings.filter(
                ({ rule, what: said }) => rule === finding.rule && said === finding.what,
              ).length;
            expect(count(after), `${what}: still there`).toBeLessThan(count(before));
            const then = counted(text, before);
            for (const [key, now] of counted(mended, after)) {
              const was = then.get(key) ?? [];
              if (isText && !ofText.has(now[0]!.rule)) continue;
              const added = now.length > was.length;
              const graver = now.some(
                (one, index) => RANK[one.severity] > RANK[was[index]?.severity ?? one.severity],
              );
              if (!added && !graver) continue;
              const worst = now.reduce((a, b) => (RANK[b.severity] > RANK[a.severity] ? b : a));
              expect(worst.severity, `${what}: adds ${worst.rule}: ${worst.what}`).not.toBe(
                'error',
              );
              if (worst.severity !== 'hint')
                expect(fix.price, `${what}: adds ${worst.rule}: ${worst.what}`).toBeDefined();
            }
          }
        }
      }),
      { numRuns: RUNS },
    );
  }, 3_600_000);

  afterAll(() => {
    const table = ALL_RULES.map(({ name }) => `${name} ${offered.get(name) ?? 0}`).join(', ');
    console.log(`Fixes tried over ${RUNS} plans: ${table}`);
  });
});
