/**
 * What is kept levels off: cells and keys are counted, not bytes, over whole texts with ever new names.
 */
import { expect, it } from 'vitest';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { keptKeys } from '../../shared/workspace/keys.ts';
import { Store } from '../../shared/workspace/store.ts';
import { planOf } from '../bench/plan-of.ts';
import { PLAN, ROOT } from '../support/plans.ts';

/** Cheap to work out, with many names: tubes, a rig of them and a shot with it. */
const renamed = (round: number): string => {
  const names = Array.from({ length: 20 }, (_, at) => `tube-${round}-${at}`);
  return `shootplan: 1
kit:
  tubes:
${names.map((name) => `    ${name}: { length: 12 mm }\n`).join('')}
rigs:
  rig-${round}: { parts: [${names.join(', ')}] }
shots:
  shot-${round}: { rig: rig-${round}, field: 30 mm }
`;
};

/** The most that was kept in the first and in the second half of so many rounds. */
function keptOver(rounds: number, change: (store: Store, round: number) => void) {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  const most = [0, 0];
  for (let round = 0; round < rounds; round++) {
    change(store, round);
    analysis.findings(PLAN);
    analysis.readiness(PLAN);
    const half = round < rounds / 2 ? 0 : 1;
    most[half] = Math.max(most[half]!, store.graph.size + keptKeys());
  }
  expect(store.graph.held).toBeLessThanOrEqual(2 * 64);
  store.close(PLAN);
  expect(store.graph.size).toBe(0);
  return most as [number, number];
}

it('over whole texts with ever new names', () => {
  const [first, second] = keptOver(400, (store, round) => store.give(PLAN, renamed(round)));
  expect(second).toBeLessThan(1.25 * first);
  expect(second).toBeLessThan(40_000);
}, 60_000);

it('over a name that is typed again and again', () => {
  const text = renamed(0);
  const line = text.split('\n').findIndex((each) => each.startsWith('  shot-'));
  const nameOf = (round: number) => `shot-${round}`;
  const type = (store: Store, round: number) => {
    if (round === 0) store.give(PLAN, text);
    const to = 2 + nameOf(Math.max(0, round - 1)).length;
    store.edit(
      PLAN,
      { start: { line, character: 2 }, end: { line, character: to } },
      nameOf(round),
    );
  };
  const [first, second] = keptOver(3000, type);
  expect(second).toBeLessThan(1.25 * first);
  expect(second).toBeLessThan(40_000);
}, 60_000);

it('and of a long plan nothing is let go that is still read', () => {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  const text = planOf(300);
  store.give(PLAN, text);
  const found = analysis.findings(PLAN);
  analysis.readiness(PLAN);
  store.graph.sweep();
  store.graph.sweep();
  store.graph.computed.clear();
  expect(analysis.findings(PLAN)).not.toBe(found);
  store.graph.computed.clear();
  // Read between two times of letting go, it stays.
  const kept = analysis.findings(PLAN);
  store.graph.sweep();
  expect(analysis.findings(PLAN)).toBe(kept);
  expect([...store.graph.computed.keys()]).toEqual([]);
}, 60_000);
