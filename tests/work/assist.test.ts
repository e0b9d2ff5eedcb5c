/**
 * What completion, lenses and solution work out, counted: how often a shot's figures were made, and
 * of which shots. None of it grows with the plan.
 */

import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import { createCore } from '../../shared/core/core.ts';
import { figuresOf } from '../../shared/figures/compute.ts';
import { coveredTiltsRad } from '../../shared/mirror/covered-tilts.ts';
import { leastTiltRad } from '../../shared/mirror/least-tilt.ts';
import { lineOf, planOf } from '../bench/plan-of.ts';
import { entryId } from '../support/entry-id.ts';
import { coreWith, PLAN } from '../support/plans.ts';

vi.mock('../../shared/figures/compute.ts', { spy: true });
vi.mock('../../shared/mirror/covered-tilts.ts', { spy: true });
vi.mock('../../shared/mirror/least-tilt.ts', { spy: true });

beforeEach(() => {
  vi.clearAllMocks();
});

/** The shots whose figures were made since the last look, and how often. */
function figured(): { readonly shots: readonly string[]; readonly times: number } {
  const { calls } = vi.mocked(figuresOf).mock;
  const shots = [...new Set(calls.map(([bench]) => bench.shot))];
  const times = calls.length;
  vi.clearAllMocks();
  return { shots, times };
}

/** What a question about one shot makes the core work out, in plans of few and of many shots. */
function asked(
  question: (core: Core, text: string) => void,
  before: (core: Core) => void = () => undefined,
): ReturnType<typeof figured> {
  const [few, many] = [10, 100].map((shots) => {
    const text = planOf(shots);
    const core = coreWith(text);
    before(core);
    figured();
    question(core, text);
    return figured();
  });
  expect(many).toEqual(few);
  return many!;
}

const behind = (text: string, key: string) => ({
  line: lineOf(text, 7, key),
  character: `    ${key}: `.length,
});

describe('completion works out the shot that it stands in and no other', () => {
  it.each(['aperture', 'shutter', 'iso'])('%s: once for each value that is tried', (key) => {
    let items = 0;
    const { shots, times } = asked((core, text) => {
      items = core.completions(PLAN, behind(text, key)).items.length;
    });
    expect(shots).toEqual(['shot-7']);
    expect(items).toBeGreaterThan(10);
    // Some are tried and can't be had; the shot as it stands is looked at too.
    expect(times).toBeLessThanOrEqual(2 * items + 5);
  });

  it('once more for what is told of one value', () => {
    const { shots, times } = asked((core) => {
      core.explain(PLAN, {
        kind: 'value',
        entry: entryId('shots/shot-7'),
        path: ['aperture'],
        text: 'f/11',
      });
    });
    expect(shots).toEqual(['shot-7']);
    expect(times).toBeLessThanOrEqual(4);
  });

  it('none for a value of the kit', () => {
    const { times } = asked((core, text) => {
      const line = text.split('\n').findIndex((each) => each.includes('aperture: f/4 to 32'));
      expect(core.completions(PLAN, { line, character: 16 }).items.length).toBeGreaterThan(0);
    });
    expect(times).toBe(0);
  });
});

describe('lenses', () => {
  it('stand without a figure, and after an edit only the edited shot is worked out again', () => {
    const text = planOf(20);
    const core = coreWith(text);
    const lenses = core.lenses(PLAN);
    expect(figured().times).toBe(0);
    const words = () => lenses.map(({ shot }) => core.lensWords(PLAN, shot));
    const before = words();
    // Each shot, and once more at the ends of what is uncertain of it.
    const once = figured();
    expect(once.shots).toHaveLength(20);
    expect(once.times).toBeLessThanOrEqual(20 * 2);
    expect(words()).toEqual(before);
    expect(figured().times).toBe(0);
    const start = behind(text, 'iso');
    core.edit(PLAN, { start, end: { ...start, character: start.character + 3 } }, '800');
    const after = words();
    expect(after.filter((one, index) => one !== before[index])).toHaveLength(1);
    expect(figured()).toEqual({ shots: ['shot-7'], times: 2 });
  });
});

describe('solution', () => {
  it('works out its own shot, however many others there are', () => {
    const { shots, times } = asked(
      (core) => {
        expect(core.solve(PLAN, 'shot-0')?.outcome).toBe('solved');
      },
      // What a change does to the plan is told by what was found before it.
      (core) => {
        core.findings(PLAN);
      },
    );
    expect(shots).toEqual(['shot-0']);
    expect(times).toBeLessThan(1000);
  });

  const steep = (change: (text: string) => string): void => {
    const choice = {
      body: pieceOf(BODIES, 'full-frame')!,
      lens: pieceOf(LENSES, 'macro-100')!,
      subject: pieceOf(SUBJECT_KINDS, 'surface')!,
    };
    const core = coreWith(change(newPlan(createCore, choice)));
    core.findings(PLAN);
    vi.clearAllMocks();
    expect(core.solve(PLAN, 'first')?.outcome).toBe('no-way');
  };
  const calls = (of: (...some: never[]) => unknown): number => vi.mocked(of).mock.calls.length;

  it('traces a mirror once for each frame and light, whatever is tried with them', () => {
    steep((text) => text.replace(/^( {4}iso: .*)/m, '$1\n    subject-speed: 60 mm/s'));
    expect(calls(coveredTiltsRad)).toBeGreaterThan(0);
    expect(calls(coveredTiltsRad)).toBeLessThan(400);
    expect(calls(leastTiltRad)).toBeGreaterThan(0);
    expect(calls(leastTiltRad)).toBeLessThan(200);
  });
});
