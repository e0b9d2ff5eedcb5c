import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare, equal, fromDecimal, rational, toNumber } from '../../shared/quantity/rational.ts';

const any = fc
  .tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: 1, max: 100_000 }))
  .map(([n, d]) => rational(n, d));

describe('exact fractions', () => {
  it('keep lowest terms, and the order of their products', () => {
    expect(rational(6, -4)).toEqual({ n: -3, d: 2 });
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(Math.sign(compare(a, b))).toBe(Math.sign(a.n * b.d - b.n * a.d) || 0);
        expect(equal(a, rational(3 * a.n, 3 * a.d))).toBe(true);
      }),
    );
  });

  it('are the decimals that were written', () => {
    expect(fromDecimal('12.5')).toEqual({ n: 25, d: 2 });
    expect(toNumber(fromDecimal('0.1'))).toBe(0.1);
  });

  it('refuse a fraction over zero and terms beyond exact integers', () => {
    expect(() => rational(1, 0)).toThrow(RangeError);
    expect(() => fromDecimal('9007199254740993')).toThrow(RangeError);
  });
});
