import { describe, expect, it } from 'vitest';
import { waterIndex } from '../../shared/film/water.ts';

describe('water at 20 °C, measured by others than those whose formula is used', () => {
  // https://scubageek.com/articles/wwwh2o.html, table 1, relative to air; air itself is 1.00027 (B. Edlén, from
  // memory). The spectral lines are those of helium, sodium and mercury.
  it.each([
    { nm: 706.5, inAir: 1.33 },
    { nm: 589.3, inAir: 1.333 },
    { nm: 501.6, inAir: 1.3364 },
    { nm: 404.7, inAir: 1.3427 },
  ])('$nm nm', ({ nm, inAir }) => {
    expect(Math.abs(waterIndex(nm) - inAir * 1.00027)).toBeLessThan(1e-4);
  });

  // The index n20/D by which refractometers are set, relative to air: 1.33299 (common practice).
  it('on the scale of refractometers', () => {
    expect(waterIndex(589.3) / 1.00027).toBeCloseTo(1.33299, 5);
  });
});

// M. Daimon and A. Masumura, Applied Optics 46, 3811 (2007), 20 °C, by refractiveindex.info (CC0): the formula
// itself, so that what this holds is that it was written down without a slip.
describe('water at the F, D and C lines', () => {
  it.each([
    { nm: 486.1, index: 1.337494 },
    { nm: 589.3, index: 1.333349 },
    { nm: 656.3, index: 1.331512 },
  ])('$nm nm', ({ nm, index }) => {
    expect(waterIndex(nm)).toBeCloseTo(index, 5);
  });

  it('is 1.333 for yellow light, as every table of optics has it (common practice)', () => {
    expect(waterIndex(589)).toBeCloseTo(1.333, 3);
  });
});
