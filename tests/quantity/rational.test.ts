import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as exact from '../../shared/quantity/rational.ts';

const { rational } = exact;
const any = fc
  .tuple(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.integer({ min: 1, max: 100_000 }))
  .map(([n, d]) => rational(n, d));

describe('exact fractions', () => {
  it('counts the frames of a day at 30000/1001', () => {
    // 24 h of clock time: 86400 · 30000/1001 = 2589410.58… frames.
    const frames = exact.multiply(rational(86_400), rational(30_000, 1001));
    expect(exact.floor(frames)).toBe(2_589_410);
  });

  it('keeps lowest terms and the laws of a field', () => {
    expect(rational(6, -4)).toEqual({ n: -3, d: 2 });
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(exact.subtract(exact.add(a, b), b)).toEqual(a);
        if (b.n !== 0) expect(exact.multiply(exact.divide(a, b), b)).toEqual(a);
        expect(Math.sign(exact.compare(a, b))).toBe(Math.sign(a.n * b.d - b.n * a.d) || 0);
      }),
    );
  });

  it('rounds halves up and floors downward', () => {
    expect(exact.round(rational(5, 2))).toBe(3);
    expect(exact.round(rational(-5, 2))).toBe(-2);
    expect(exact.floor(rational(-1, 3))).toBe(-1);
    expect(exact.floor(rational(-4, 2))).toBe(-2);
  });

  it('refuses a fraction over zero and terms beyond exact integers', () => {
    expect(() => rational(1, 0)).toThrow(RangeError);
    const huge = rational(Number.MAX_SAFE_INTEGER);
    expect(() => exact.multiply(huge, huge)).toThrow(RangeError);
  });
});
