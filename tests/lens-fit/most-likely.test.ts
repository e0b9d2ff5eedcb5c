import { describe, expect, it } from 'vitest';
import { cholesky, solved } from '../../shared/lens-fit/cholesky.ts';
import { misfitsOf } from '../../shared/lens-fit/misfits.ts';
import { mostLikely, sigmaOf } from '../../shared/lens-fit/most-likely.ts';

describe('linear algebra', () => {
  // A worked example that many books share (J. Burden and R. Faires, Numerical Analysis, from memory).
  it('factors a symmetric matrix', () => {
    const lower = cholesky([
      [4, -1, 1],
      [-1, 4.25, 2.75],
      [1, 2.75, 3.5],
    ]);
    expect(lower).toEqual([
      [2, 0, 0],
      [-0.5, 2, 0],
      [0.5, 1.5, 1],
    ]);
    expect(solved(lower, [4, 6, 7.25])).toEqual([1, 1, 1]);
  });
});

describe('what is most likely', () => {
  // Two normals: precisions add up, the mean is weighted by them (A. Gelman, Bayesian Data Analysis, 2.5).
  it('of one unknown that was measured twice is the weighted mean', () => {
    const seen = (value: number, sigma: number) => ({
      value,
      sigma,
      predict: ([x]: readonly number[]) => x!,
    });
    const found = mostLikely([{ middle: 10, sigma: 2 }], [seen(12, 1), seen(11, 0.5)]);
    const precision = 1 / 4 + 1 + 4;
    expect(found.values[0]).toBeCloseTo((10 / 4 + 12 + 11 * 4) / precision, 9);
    expect(sigmaOf(found, ([x]) => x!)).toBeCloseTo(1 / Math.sqrt(precision), 9);
  });

  it('of what was never measured is what was believed', () => {
    const found = mostLikely(
      [
        { middle: 3, sigma: 0.5 },
        { middle: -1, sigma: 2 },
      ],
      [],
    );
    expect(found.values).toEqual([3, -1]);
    expect(sigmaOf(found, ([, y]) => y!)).toBeCloseTo(2, 9);
  });

  it('ties two unknowns to each other by a measured sum', () => {
    const belief = { middle: 0, sigma: 1 };
    const sum = { value: 2, sigma: 0.01, predict: ([x, y]: readonly number[]) => x! + y! };
    const found = mostLikely([belief, belief], [sum]);
    expect(found.values[0]).toBeCloseTo(1, 3);
    expect(sigmaOf(found, ([x, y]) => x! + y!)).toBeCloseTo(0.01, 4);
    expect(sigmaOf(found, ([x, y]) => x! - y!)).toBeCloseTo(Math.SQRT2, 4);
  });

  it('finds its way where the measured is not straight', () => {
    const found = mostLikely(
      [{ middle: 1, sigma: 10 }],
      [{ value: 9, sigma: 1e-4, predict: ([x]) => x! ** 2 }],
    );
    expect(found.values[0]).toBeCloseTo(3, 4);
  });

  it('stays where nothing can be predicted', () => {
    const found = mostLikely(
      [{ middle: 1, sigma: 1 }],
      [{ value: 1, sigma: 1, predict: () => Number.NaN }],
    );
    expect(found.values).toEqual([1]);
    expect(found.axes).toEqual([[1]]);
  });
});

describe('what does not fit', () => {
  /** A straight line, read at so many places, once wrongly. */
  const beliefs = [
    { middle: 0, sigma: 5 },
    { middle: 0, sigma: 5 },
  ];
  const line = (count: number) =>
    Array.from({ length: count }, (_, at) => ({
      value: 1 + 0.1 * at + (at % 3) * 0.02 + (at === 4 ? 1 : 0),
      sigma: 0.1,
      predict: ([start, slope]: readonly number[]) => start! + slope! * at,
    }));

  // By brute force: the fit without the reading. Few are judged so, many by one fit of all.
  it.each([10, 24, 25, 60])('among %d is found, with what the others say', (count) => {
    const data = line(count);
    const others = mostLikely(beliefs, data.toSpliced(4, 1));
    const found = misfitsOf(beliefs, data);
    expect(found.map(({ index }) => index)).toEqual([4]);
    expect(found[0]!.expected).toBeCloseTo(data[4]!.predict(others.values), 6);
  });

  it('is told of no more than can be read, however long the list', () => {
    const wild = line(2000).map((datum, at) => ({ ...datum, value: at % 2 ? 1e3 : -1e3 }));
    expect(misfitsOf(beliefs, wild).length).toBeLessThanOrEqual(24);
  });
});
