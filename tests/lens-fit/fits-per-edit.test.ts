/** How often a lens is fitted: once when its bench has changed, however many shots it is in. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type * as MostLikely from '../../shared/lens-fit/most-likely.ts';
import { MEASURED_PLAN } from '../support/measured-plan.ts';
import { coreWith, PLAN } from '../support/plans.ts';

/** Readings of each fit, in order. */
const fits = vi.hoisted((): number[] => []);

vi.mock(import('../../shared/lens-fit/most-likely.ts'), async (original) => {
  const actual = await original();
  return {
    ...actual,
    mostLikely: (...given: Parameters<typeof MostLikely.mostLikely>) => {
      fits.push(given[1].length);
      return actual.mostLikely(...given);
    },
  };
});

beforeEach(() => {
  fits.length = 0;
});

/** The plan with so many shots of each lens. */
function planOf(count: number): string {
  const shots = MEASURED_PLAN.indexOf('\nshots:\n') + '\nshots:\n'.length;
  const end = MEASURED_PLAN.indexOf('\npreflight:');
  const both = MEASURED_PLAN.slice(shots, end);
  const all = Array.from({ length: count }, (_, index) =>
    both.replace(/^ {2}(frost|skin):/gm, `  $1-${index}:`),
  );
  return MEASURED_PLAN.slice(0, shots) + all.join('') + MEASURED_PLAN.slice(end);
}

/** All that is on the screen after an edit: findings, lenses' words, figures with their bounds. */
function look(core: Core): void {
  core.findings(PLAN);
  for (const { shot } of core.lenses(PLAN)) core.lensWords(PLAN, shot);
  core.figures(PLAN);
}

/** Edits a line of the plan and says which fits that took. */
function fitsAfter(core: Core, text: string, line: string, written: string): readonly number[] {
  const at = text.split('\n').indexOf(line);
  expect(at).toBeGreaterThan(0);
  fits.length = 0;
  const start = { line: at, character: 0 };
  core.edit(PLAN, { start, end: { line: at, character: line.length } }, written);
  look(core);
  return [...fits];
}

/** Of long-200: two rows with two readings each. */
const READINGS = 4;

describe.each([1, 5])('with %d shots of each lens', (count) => {
  const text = planOf(count);
  const opened = (): Core => {
    const core = coreWith(text);
    look(core);
    return core;
  };

  it('an edit in one row fits its lens once', () => {
    const taken = fitsAfter(opened(), text, '          field: 67 mm', '          field: 67.3 mm');
    // One for the lens, one that judges its readings, and at most one without each of them.
    expect(taken.filter((readings) => readings === READINGS)).toHaveLength(2);
    expect(taken.length).toBeLessThanOrEqual(2 + READINGS);
  });

  it('an edit that makes a reading doubtful judges it without itself', () => {
    const taken = fitsAfter(opened(), text, '          field: 67 mm', '          field: 72 mm');
    expect(taken.filter((readings) => readings === READINGS - 1).length).toBeGreaterThan(0);
    expect(taken.length).toBeLessThanOrEqual(2 + 2 * READINGS);
  });

  it('an edit of a shot or of another part of the kit fits nothing', () => {
    const core = opened();
    expect(fitsAfter(core, text, '    iso: 1250', '    iso: 1600')).toEqual([]);
    expect(
      fitsAfter(core, text, '    colour-temperature: 3200 K', '    colour-temperature: 3000 K'),
    ).toEqual([]);
  });

  it('opening fits each lens once', () => {
    opened();
    expect(fits.filter((readings) => readings === READINGS)).toHaveLength(2);
    // macro-100 has three readings.
    expect(fits.length).toBeLessThanOrEqual(2 + 3 + 2 + READINGS);
  });
});
