/**
 * One defect planted in a clean plan: the right rule says so on its line, the figures of the other
 * shots are what they were, and there are at most two findings more than before.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { createCore } from '../../shared/workspace/core.ts';
import type { Core } from '../../shared/workspace/facade.ts';
import { type Defect, defectsOf } from './defects.ts';

const ROOT = 'file:///samples';
const sample = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../../samples/${name}`, import.meta.url)), 'utf8');
const KIT = sample('workshop-kit.shootplan.yaml');

const PLANS: Readonly<Record<string, string>> = {
  'the examples’ plan': EXAMPLE_PLAN,
  'watch-movement': sample('watch-movement.shootplan.yaml'),
  slick: sample('slick.shootplan.yaml'),
  'tide-panes': sample('tide-panes.shootplan.yaml'),
};

const PLAN = `${ROOT}/plan.shootplan.yaml`;

function coreOf(text: string): Core {
  const core = createCore({ rootOf: () => ROOT });
  core.give(PLAN, text);
  core.give(`${ROOT}/workshop-kit.shootplan.yaml`, KIT);
  for (const file of core.wanted(PLAN)) core.refuse(file, 'not-found');
  return core;
}

/** Findings that ask for something; hints stay in the text. */
const loud = (core: Core) => core.findings(PLAN).filter(({ severity }) => severity !== 'hint');

/** Said of the shot that suffers, wherever the number stands that is wrong. */
const IN_THE_SHOT = new Set([
  'lens-in-the-mirror',
  'source-too-small',
  'outlasts-the-film',
  'background-washes',
]);

const tried = new Map<string, number>();

describe.each(Object.entries(PLANS))('%s', (_, plan) => {
  const clean = coreOf(plan);
  const before = loud(clean).length;
  const figures = clean.figures(PLAN);
  const cases = defectsOf(plan).map((defect): [string, Defect] => [
    `line ${defect.line + 1}, ${defect.kind}: ${defect.text.split('\n')[defect.line]?.trim()}`,
    defect,
  ]);

  it.each(cases)('%s', (_, { kind, line, text, rules, shot }) => {
    tried.set(kind, (tried.get(kind) ?? 0) + 1);
    const core = coreOf(text);
    const found = loud(core);
    const said = found.map(({ rule, what, range }) => `${range.start.line + 1} ${rule}: ${what}`);
    const there = found.filter(({ rule, range, shot: of }) => {
      if (!rules.includes(rule)) return false;
      // What is missing is said of the entry that misses it.
      const about = kind === 'removed key' || IN_THE_SHOT.has(rule);
      return about || of === shot || (range.start.line <= line && range.end.line >= line);
    });
    expect(there, `${rules.join(' or ')} in ${said.join(' | ')}`).not.toEqual([]);
    // A subject that several shots film is wrong in each of them, once.
    const suffering = new Set(there.map((one) => one.shot)).size;
    const most = Math.max(2, suffering);
    expect(found.length - before, said.join(' | ')).toBeLessThanOrEqual(most);
    if (shot === undefined) return;
    const now = core.figures(PLAN);
    for (const [name, its] of figures)
      if (name !== shot) expect(JSON.stringify(now.get(name)), name).toBe(JSON.stringify(its));
  });
});

afterAll(() => {
  const counts = [...tried].map(([kind, count]) => `${kind} ${count}`).join(', ');
  const all = [...tried.values()].reduce((sum, count) => sum + count, 0);
  console.log(`${all} defects planted: ${counts}`);
});
