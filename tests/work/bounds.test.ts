/** What it costs to know how sure the figures are, counted in shots laid out. */
import { beforeEach, expect, it, vi } from 'vitest';
import { changedBench } from '../../shared/figures/changed.ts';
import { widthsOf } from '../../shared/figures/widths.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { NUMBERS } from '../support/numbers.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { SHEET_PLANS } from '../support/sheet-plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

vi.mock('../../shared/figures/changed.ts', { spy: true });
vi.mock('../../shared/figures/widths.ts', { spy: true });

beforeEach(() => {
  vi.clearAllMocks();
});

const laidOut = (): number => vi.mocked(changedBench).mock.calls.length;

it('nobody who does not ask how sure they are pays for it', () => {
  // A check of a plan in which nothing is wrong.
  const found = coreWith(EXAMPLE_PLAN).findings(PLAN);
  expect(found.filter(({ severity }) => severity !== 'hint')).toEqual([]);
  for (const uncertain of uncertainIn(SHEET_PLANS['as it stands']!).values())
    expect(uncertain.middle.figures.effectiveFNumber.known).toBe(true);
  expect(laidOut()).toBe(0);
  expect(vi.mocked(widthsOf)).not.toHaveBeenCalled();
});

it('all bounds of a shot lay it out at both ends of each input, and once for each corner', () => {
  for (const [name, text] of Object.entries(SHEET_PLANS))
    for (const shot of uncertainIn(text).values()) {
      vi.clearAllMocks();
      const { widths } = shot;
      const stated = NUMBERS.filter(([, pick]) => shot.bounds(pick));
      // Where the iris hides what others of the rig do, these are looked at from its other end too.
      const views = widths.some(({ hides }) => hides) ? 2 : 1;
      const between = widths.reduce((sum, width) => sum + width.between.length, 0);
      // A light that goes two ways is looked at in all corners of its way.
      const turning = widths.filter((width) => width.between.length > 0).length;
      const corners = 2 * views * stated.length * (turning > 0 ? 2 ** turning + 2 : 1);
      expect(laidOut(), name).toBeLessThanOrEqual(views * (2 * widths.length + between) + corners);
      // Asked again, they are there.
      const before = laidOut();
      for (const [, pick] of NUMBERS) shot.bounds(pick);
      expect(laidOut()).toBe(before);
      // Most figures share their corners, so that all of them together cost a few. What is 0 in the
      // middle, as the dark part of a frame, is followed from one input to the next.
      expect(before, name).toBeLessThanOrEqual(10 * widths.length);
    }
});
