/**
 * Statics against worked examples of OpenStax, University Physics vol. 1, ch. 12 "Static Equilibrium
 * and Elasticity" (the numbers only).
 */
import { describe, expect, it } from 'vitest';
import { centreOfGravityMm, momentNm } from '../../shared/load/statics.ts';

describe('OpenStax University Physics vol. 1, ch. 12', () => {
  it('a car with 52 % of its weight on the front axle, wheelbase 2.5 m: 1.3 m from the rear axle', () => {
    const axles = [
      { massKg: 0.48, atMm: 0 },
      { massKg: 0.52, atMm: 2500 },
    ];
    expect(centreOfGravityMm(axles)).toBeCloseTo(1300, 9);
  });

  it('a metre stick on a fulcrum is balanced by 316.7 g at its right end', () => {
    // The stick of 150 g on a fulcrum 30 cm from its right end; 50 g and 75 g to the left, 70 and 40 cm off.
    const left = [
      { massKg: 0.05, atMm: -700 },
      { massKg: 0.075, atMm: -400 },
      { massKg: 0.15, atMm: -200 },
    ];
    const right = {
      massKg: -momentNm(left, 0) / momentNm([{ massKg: 1, atMm: 300 }], 0),
      atMm: 300,
    };
    expect(right.massKg * 1000).toBeCloseTo(316.7, 1);
    expect(centreOfGravityMm([...left, right])).toBeCloseTo(0, 9);
  });
});
