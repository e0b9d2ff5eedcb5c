/**
 * Law A at the length of a day: after thousands of edits of one core, most of them in a few shots, it
 * says of every text what it says of it afresh. A bad plan must never come to look clean.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { lineOf, planOf, TOO_BRIGHT, WELL_EXPOSED } from '../bench/plan-of.ts';
import { MEASURED_PLAN } from '../support/measured-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { Day, type Difference } from './day.ts';

const sample = (name: string): string =>
  readFileSync(path.join(import.meta.dirname, '../../samples', `${name}.shootplan.yaml`), 'utf8');

/** Findings in their order, and the first lenses: a plan's findings are most of what it shows. */
function shown(core: Core): string {
  const lenses = core.lenses(PLAN).slice(0, 8);
  return JSON.stringify([
    core.findings(PLAN),
    lenses.map(({ shot }) => core.lensWords(PLAN, shot)),
  ]);
}

/** Each text's answers by a core that has seen no other. */
function afresh(): (text: string) => string {
  const known = new Map<string, string>();
  return (text) => {
    const answer = known.get(text) ?? shown(coreWith(text));
    known.set(text, answer);
    return answer;
  };
}

/** Retypes one value of one line, round and round; the core is asked after each. */
function retyped(plan: string, line: number, values: readonly string[], edits: number): void {
  const of = afresh();
  const core = coreWith(plan);
  shown(core);
  const lines = plan.split('\n');
  const [before = '', was = ''] = /^(\s*\S+: )(.*)$/.exec(lines[line]!)!.slice(1);
  let length = was.length;
  for (let edit = 0; edit < edits; edit++) {
    const value = values[edit % values.length]!;
    const start = { line, character: before.length };
    core.edit(PLAN, { start, end: { line, character: before.length + length } }, value);
    length = value.length;
    const text = lines.with(line, before + value).join('\n');
    expect(shown(core), `edit ${edit + 1}, ${value}`).toBe(of(text));
  }
}

describe('one value back and forth', () => {
  it('in a sample', () => {
    const plan = sample('salt-garden');
    const line = plan.split('\n').findIndex((each) => each.startsWith('    aperture:'));
    retyped(plan, line, ['f/4', 'f/16', 'f/2.8', 'f/11'], 150);
  }, 60_000);

  it('in a row of a bench', () => {
    const lines = MEASURED_PLAN.split('\n');
    for (const [key, values] of [
      ['          field: 67 mm', ['67.2 mm', '120 mm', '67 \u00b1 1 mm', '', '67 furlongs']],
      ['          effective-f-number: 9.5', ['9.6', '30', '9 to 10', 'f']],
      ['          ring: infinity', ['closest', '1.5 m', 'infinite', 'infinity']],
    ] as const)
      retyped(MEASURED_PLAN, lines.indexOf(key), values, 2 * values.length);
  });

  it.each([4, 64, 67])(
    'in a plan of %d shots',
    (shots) => {
      const plan = planOf(shots);
      const line = lineOf(plan, 2, 'iso');
      retyped(plan, line, [String(TOO_BRIGHT), String(WELL_EXPOSED), '12800'], 100);
    },
    60_000,
  );
});

it('texts given in turn', () => {
  const of = afresh();
  const plan = planOf(4);
  const texts = [plan, plan.replaceAll('f/8', 'f/4'), plan.replaceAll('f/8', 'f/22')];
  const core = coreWith(plan);
  for (let turn = 0; turn < 120; turn++) {
    const text = texts[turn % texts.length]!;
    core.give(PLAN, text);
    expect(shown(core), `turn ${turn + 1}`).toBe(of(text));
  }
}, 60_000);

const others = {
  'workshop-kit.shootplan.yaml': sample('workshop-kit'),
  'lantern.shootplan.yaml': sample('lantern'),
};

/** A difference as it is told: by the seed and the edit it can be made again. */
const told = (found: Difference | null): string => {
  if (!found) return 'none';
  const { aged, fresh } = found;
  let at = 0;
  while (at < aged.length && aged[at] === fresh[at]) at++;
  const around = (answer: string) => answer.slice(Math.max(0, at - 200), at + 200);
  return `edit ${found.edit}, ${found.of}: ${around(aged)}\nbut afresh ${around(fresh)}`;
};

it('a day at a plan and the kit that it uses', () => {
  for (let run = 0; run < manyRuns(1); run++) {
    const options = { seed: 1 + run, edits: 2000, every: 100 };
    const day = new Day({ ...options, plan: sample('tide-panes'), others });
    expect(told(day.run()), `seed ${options.seed}`).toBe('none');
  }
}, 3_600_000);

it('a day at a plan whose lens was measured', () => {
  const options = { seed: 1, edits: manyRuns(80), every: 40, plan: sample('moth-wings') };
  expect(told(new Day(options).run())).toBe('none');
}, 3_600_000);
