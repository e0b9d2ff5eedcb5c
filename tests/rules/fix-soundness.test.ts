/**
 * Every fix that is offered does what it says: applied, its finding is gone, no error is new, and
 * whatever is new or worse is named in its price. Nothing that is said beside it is a setting that
 * body or lens doesn't have.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { fixAll } from '../../server/handlers/fix-all.ts';
import type { Core } from '../../shared/api/facade.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { plansAimedAt } from '../support/aimed-plans.ts';
import { each } from '../support/each.ts';
import { judgeFix, judgeFixAll } from '../support/judged-fix.ts';
import { changed, coreWith, given, PLAN } from '../support/plans.ts';
import { randomPlan } from '../support/random-plans.ts';
import { manyRuns } from '../support/runs.ts';
import { judgeFindings, judgeHovers, judgeSaid, unsettable } from '../support/settable.ts';
import { WITHOUT_FIX } from '../support/without-fix.ts';

const RUNS = manyRuns(60);
/** As often each rule's fixes are tried at least. */
const LEAST = 20;
const ENOUGH = manyRuns(LEAST);
/** Plans aimed at a rule; few are asked of before there is enough. */
const MOST_AIMED = manyRuns(150);
/** Names without use are hints of which a plan has many, all alike. */
const MOST_ALIKE = 3;

const offered = new Map<string, number>();
const count = (rule: string): number => {
  const times = (offered.get(rule) ?? 0) + 1;
  offered.set(rule, times);
  return times;
};
let together = 0;

describe('fixes', () => {
  it('do what they say and name their price', () => {
    fc.assert(
      fc.property(randomPlan(), ({ text }) => {
        const core = coreWith(text);
        const before = core.findings(PLAN);
        judgeFindings(text, before);
        judgeHovers(text, core);
        const tried = new Map<string, number>();
        for (const finding of before) {
          const times = (tried.get(finding.rule) ?? 0) + 1;
          tried.set(finding.rule, times);
          if (times > MOST_ALIKE) continue;
          for (const fix of core.fixesOf(finding)) {
            count(finding.rule);
            judgeSaid(text, finding.shot, fix.title);
            judgeFix(text, before, finding, fix);
          }
        }
        if (judgeFixAll(text, core)) together++;
      }),
      { numRuns: RUNS },
    );
  }, 3_600_000);

  it('and findings would be heard to say a setting that nobody has', () => {
    const judged = (said: string) => unsettable(EXAMPLE_PLAN, 'frost', said);
    expect(judged('Correct exposure needs about ISO 250000000000000.')).toEqual([
      'ISO 250000000000000',
    ]);
    expect(judged('| ISO needed | **51200** |')).toEqual(['ISO needed | **51200']);
    expect(judged('Stop down to f/45')).toEqual(['f/45']);
    expect(judged('Set shutter to 1/64000 s')).toEqual(['1/64000 s']);
    expect(judged('The effective aperture is f/45; ISO 25600, f/32, 1/8000 s.')).toEqual([]);
  });

  it('that have a price together are not all made at once', () => {
    const text = changed(EXAMPLE_PLAN, {
      'shots/frost/aperture': 'f/64',
      'shots/frost/shutter': '1/15 s',
    });
    const core = coreWith(text);
    const ways = core.findings(PLAN).flatMap((finding) => core.fixesOf(finding));
    // Either is free; with both the shot is a fault of its own, underexposed by 2 stops and more.
    const apart = ways
      .filter(({ sideEffects }) => sideEffects === undefined)
      .map(({ title }) => title);
    expect(apart).toEqual(['Set f/32 (the nearest on the lens)', 'Set shutter to 1/25 s']);
    expect(fixAll(core, PLAN).map((edit) => edit.text)).toEqual(['f/32']);
    expect(judgeFixAll(text, core)).toBe(true);
  });

  let offering: Core | undefined;
  const fixed = ALL_RULES.filter(({ name }) => !WITHOUT_FIX.has(name));
  it('of every rule are tried often', () => {
    each(
      fixed,
      (rule) => {
        const { name } = rule;
        // Plans drawn for nothing in particular have tried it too.
        let times = offered.get(name) ?? 0;
        for (const text of plansAimedAt(rule, MOST_AIMED)) {
          if (times >= ENOUGH) break;
          offering = offering ? given(offering, text) : coreWith(text);
          const core = offering;
          const before = core.findings(PLAN);
          judgeFindings(text, before);
          for (const finding of before.filter((one) => one.rule === name))
            for (const fix of core.fixesOf(finding)) {
              times++;
              count(name);
              judgeSaid(text, finding.shot, fix.title);
              judgeFix(text, before, finding, fix);
            }
        }
        expect(times).toBeGreaterThanOrEqual(LEAST);
      },
      ({ name }) => name,
    );
  }, 3_600_000);

  it('without a price bring nothing when they are applied together', () => {
    expect(together).toBeGreaterThanOrEqual(LEAST);
  });

  afterAll(() => {
    const table = ALL_RULES.map(({ name }) => `${name} ${offered.get(name) ?? 0}`).join(', ');
    console.log(`Fixes tried over ${RUNS} plans, ${together} times all together: ${table}`);
  });
});
