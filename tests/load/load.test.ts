import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stabilityFactor } from '../../shared/load/boom.ts';
import { centreOfGravityMm, momentNm, totalMassKg } from '../../shared/load/statics.ts';

const weight = fc.record({
  massKg: fc.double({ min: 0.01, max: 20, noNaN: true }),
  atMm: fc.double({ min: -500, max: 1500, noNaN: true }),
});
const weights = fc.array(weight, { minLength: 1, maxLength: 8 });

describe('weights in a row', () => {
  it('add: masses and moments of two groups are those of both together', () => {
    fc.assert(
      fc.property(
        weights,
        weights,
        fc.double({ min: -100, max: 900, noNaN: true }),
        (a, b, about) => {
          expect(totalMassKg([...a, ...b])).toBeCloseTo(totalMassKg(a) + totalMassKg(b), 9);
          expect(momentNm([...a, ...b], about)).toBeCloseTo(
            momentNm(a, about) + momentNm(b, about),
            6,
          );
        },
      ),
    );
  });

  it('balance where they make no moment, between the first and the last', () => {
    fc.assert(
      fc.property(weights, (all) => {
        const centre = centreOfGravityMm(all);
        expect(momentNm(all, centre)).toBeCloseTo(0, 6);
        const places = all.map(({ atMm }) => atMm);
        expect(centre).toBeGreaterThanOrEqual(Math.min(...places) - 1e-9);
        expect(centre).toBeLessThanOrEqual(Math.max(...places) + 1e-9);
      }),
    );
  });

  it('without any mass balance nowhere', () => {
    expect(() => centreOfGravityMm([])).toThrow(RangeError);
  });
});

describe('a boom', () => {
  const boom = fc.record({
    loadKg: fc.double({ min: 0.1, max: 20, noNaN: true }),
    reachMm: fc.double({ min: 100, max: 3000, noNaN: true }),
    footprintMm: fc.double({ min: 300, max: 1500, noNaN: true }),
    standKg: fc.double({ min: 0, max: 20, noNaN: true }),
    counterweightKg: fc.double({ min: 0, max: 20, noNaN: true }),
    counterweightArmMm: fc.double({ min: 0, max: 1000, noNaN: true }),
  });
  const more = fc.double({ min: 0, max: 10, noNaN: true });

  it('never tips sooner with more counterweight, a wider base, or less reach', () => {
    fc.assert(
      fc.property(boom, more, (it, extra) => {
        const factor = stabilityFactor(it);
        expect(
          stabilityFactor({ ...it, counterweightKg: it.counterweightKg + extra }),
        ).toBeGreaterThanOrEqual(factor);
        expect(
          stabilityFactor({ ...it, footprintMm: it.footprintMm + 100 * extra }),
        ).toBeGreaterThanOrEqual(factor * (1 - 1e-12));
        expect(
          stabilityFactor({ ...it, reachMm: it.reachMm / (1 + extra) }),
        ).toBeGreaterThanOrEqual(factor);
      }),
    );
  });

  it('stands exactly at its edge with factor 1', () => {
    // 4 kg at 1 m, feet 0.5 m from the axis: 4·0.5 against 2·(0.5 + 0.5).
    expect(
      stabilityFactor({
        loadKg: 4,
        reachMm: 1000,
        footprintMm: 1000,
        standKg: 0,
        counterweightKg: 2,
        counterweightArmMm: 500,
      }),
    ).toBeCloseTo(1, 12);
  });

  it('can’t be tipped by a load inside its feet', () => {
    expect(
      stabilityFactor({
        loadKg: 9,
        reachMm: 300,
        footprintMm: 1000,
        standKg: 1,
        counterweightKg: 0,
        counterweightArmMm: 0,
      }),
    ).toBe(Number.POSITIVE_INFINITY);
  });
});
