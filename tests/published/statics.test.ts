/**
 * Statics against worked examples of OpenStax, University Physics vol. 1, ch. 12 "Static Equilibrium
 * and Elasticity", and College Physics, ch. 9 "Statics and Torque" (the numbers only).
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

describe('OpenStax College Physics, ch. 9: moments in N·m', () => {
  // A plank is held up by one force at its pivot, so that about the seat of the first child the weights make
  // the moment of that force: what the book prints in newtons, times 1.60 m. It has g as 9.80 m/s².
  const first = { massKg: 26, atMm: 0 };

  it('example 9.1: children of 26.0 and 32.0 kg, 1.60 and 1.30 m from the pivot, push on it with 568 N', () => {
    const weights = [first, { massKg: 32, atMm: 1600 + 1300 }];
    expect(Math.abs(momentNm(weights, 0) / (568 * 1.6) - 1)).toBeLessThan(0.002);
    expect(Math.abs(momentNm(weights, 1600))).toBeLessThan(0.001 * 568 * 1.6);
  });

  it('problem 5: with a plank of 12.0 kg, 0.160 m to the first one’s side, 1.36 m and 686 N', () => {
    const weights = [first, { massKg: 12, atMm: 1600 - 160 }, { massKg: 32, atMm: 1600 + 1360 }];
    expect(Math.abs(momentNm(weights, 0) / (686 * 1.6) - 1)).toBeLessThan(0.002);
    expect(Math.abs(momentNm(weights, 1600))).toBeLessThan(0.002 * 686 * 1.6);
  });
});
