/** Cards and batteries filled one take at a time, against doing just that. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countFilled, type Run, totalOf } from '../../shared/recording/filling.ts';

/** Brute force: take for take onto the card that is in, a new one where it doesn't fit. */
function oneByOne(runs: readonly Run[], capacity: number): number | null {
  let cards = 0;
  let left = 0;
  for (const { each, takes } of runs)
    for (let take = 0; take < takes; take++) {
      if (each > capacity) return null;
      if (each > left) {
        cards++;
        left = capacity;
      }
      left -= each;
    }
  return cards;
}

const run = fc.record({ each: fc.integer({ min: 1, max: 60 }), takes: fc.nat({ max: 30 }) });

describe('takes on cards', () => {
  it('are counted as if laid one by one', () => {
    fc.assert(
      fc.property(
        fc.array(run, { maxLength: 8 }),
        fc.integer({ min: 1, max: 80 }),
        (runs, card) => {
          expect(countFilled(runs, card)).toBe(oneByOne(runs, card));
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('never fit on fewer than their sum asks for', () => {
    fc.assert(
      fc.property(
        fc.array(run, { maxLength: 8 }),
        fc.integer({ min: 60, max: 200 }),
        (runs, card) => {
          expect(countFilled(runs, card)).toBeGreaterThanOrEqual(Math.ceil(totalOf(runs) / card));
        },
      ),
    );
  });

  it('of millions of takes are counted without laying them', () => {
    expect(countFilled([{ each: 3, takes: 1e9 }], 10)).toBe(Math.ceil(1e9 / 3));
  });

  it('fill a card to its last byte, whatever decimals do', () => {
    expect(countFilled([{ each: 0.1, takes: 3 }], 0.3)).toBe(1);
    expect(countFilled([{ each: 0.1, takes: 10 }], 1)).toBe(1);
  });

  it('need none where there are none', () => {
    expect(countFilled([], 1)).toBe(0);
    expect(countFilled([{ each: 5, takes: 0 }], 1)).toBe(0);
  });
});
