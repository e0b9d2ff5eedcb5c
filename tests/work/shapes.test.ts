/**
 * Plans with many of one thing: twice as many cost about twice as much and never four times. Counted
 * in values read and computed, shots calculated and characters read anew; no clock decides.
 */
import { expect, it } from 'vitest';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { EFFORT_OF_MENU } from '../../shared/workspace/most-tried.ts';
import { Store } from '../../shared/workspace/store.ts';
import { SHAPES } from '../bench/shapes.ts';
import { coreWith, PLAN, ROOT } from '../support/plans.ts';

const SOME = 16;
/** Twice as much, and what belongs to the plan around it. */
const MORE = 2.4;

const stepsToOpen = (text: string): number => {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, text);
  analysis.findings(PLAN);
  return store.graph.steps;
};

it('twice as many of anything take at most about twice the work to open', () => {
  for (const [name, make] of Object.entries(SHAPES)) {
    const [once, twice] = [stepsToOpen(make(SOME)), stepsToOpen(make(2 * SOME))];
    expect(once, name).toBeGreaterThan(100);
    expect(twice, name).toBeLessThanOrEqual(MORE * once);
  }
});

it('fixes for a whole file stop at the first trial beyond their limit', () => {
  const core = coreWith(SHAPES['keys that are none']!(80));
  const spent = (work: () => void): number => {
    const before = core.effort();
    work();
    return core.effort() - before;
  };
  const all = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
  const some = spent(() => expect(core.fixesIn(PLAN, all).length).toBeGreaterThan(0));
  // What was tried before is not tried again, so that only the others are counted here.
  const others = core.findings(PLAN).map((finding) => spent(() => core.fixesOf(finding)));
  expect(some).toBeLessThanOrEqual(EFFORT_OF_MENU + Math.max(...others));
  expect(Math.max(...others)).toBeGreaterThan(0);
});

it('what a plan finds is collected once for all its trials', () => {
  const core = coreWith(SHAPES['lenses without use']!(60));
  const unused = core.findings(PLAN).filter(({ rule }) => rule === 'unused-name');
  const costs = unused.map((finding) => {
    const before = core.effort();
    expect(core.fixesOf(finding).length).toBeGreaterThan(0);
    return core.effort() - before;
  });
  const [first, ...others] = costs as [number, ...number[]];
  expect(Math.max(...others)).toBeLessThan(first);
  // A change that stays is seen: all is collected anew, once.
  core.edit(PLAN, { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, '# new\n');
  const moved = core.findings(PLAN).find(({ rule }) => rule === 'unused-name')!;
  const before = core.effort();
  expect(core.fixesOf(moved)[0]?.edits[0]?.range.start.line).toBeGreaterThan(0);
  expect(core.effort() - before).toBeGreaterThan(Math.max(...others));
});

it('the same fix of a rig is tried once for all its shots', () => {
  const core = coreWith(SHAPES['shots out of reach']!(12));
  const costs = core
    .findings(PLAN)
    .filter(({ rule }) => rule === 'field-out-of-reach')
    .map((finding) => {
      const before = core.effort();
      expect(core.fixesOf(finding).length).toBeGreaterThan(0);
      return core.effort() - before;
    });
  expect(costs).toHaveLength(12);
  for (const later of costs.slice(1)) expect(later).toBeLessThan(0.75 * costs[0]!);
});
