import { describe, expect, it } from 'vitest';
import { waterIndex } from '../../shared/film/water.ts';

// M. Daimon and A. Masumura, Applied Optics 46, 3811 (2007), 20 °C, by refractiveindex.info (CC0).
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
