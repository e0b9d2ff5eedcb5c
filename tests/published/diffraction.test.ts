import { describe, expect, it } from 'vitest';
import { bestEffectiveFNumber, leastBlurUm } from '../../shared/optics/best-aperture.ts';
import {
  AIRY_FACTOR,
  airyUm,
  diffractionContrast,
  nyquistPerMm,
} from '../../shared/optics/diffraction.ts';
import { coarserPixelUm } from '../../shared/optics/recorded-pixel.ts';

/** J1 by its integral, (1/π)∫cos(θ − x·sin θ) dθ over [0, π]; the trapezoid rule is exact to rounding here. */
function besselJ1(x: number): number {
  const steps = 200;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const theta = (2 * Math.PI * i) / steps;
    sum += Math.cos(theta - x * Math.sin(theta));
  }
  return sum / steps;
}

describe('the Airy disk', () => {
  // First zero of J1 over π: 1.2196699 (Abramowitz and Stegun, table 9.5, from memory: j1,1 = 3.83170 59702).
  it('has its first dark ring at the first zero of J1', () => {
    expect(besselJ1(Math.PI * 1.2196699)).toBeCloseTo(0, 7);
    expect(Math.abs(AIRY_FACTOR / 2 / 1.2196699 - 1)).toBeLessThan(0.0005);
  });

  // OpenStax University Physics vol. 3, ch. 4: 2.40 m mirror, 550 nm: 2.80e-7 rad.
  it('a 2.40 m aperture resolves 2.80e-7 rad', () => {
    const focalMm = 10_000;
    const radiusUm = airyUm(focalMm / 2400) / 2;
    expect((radiusUm / 1000 / focalMm).toExponential(2)).toBe('2.80e-7');
  });

  it('f/8 at 0.55 µm: 10.74 µm', () => {
    expect(airyUm(8).toFixed(2)).toBe('10.74');
  });
});

describe('contrast', () => {
  /** Brute force: how much two unit circles, a shift apart, overlap. Autocorrelation of the pupil. */
  function overlap(shift: number): number {
    const steps = 20_000;
    let area = 0;
    for (let i = 0; i < steps; i++) {
      const y = -1 + (2 * (i + 0.5)) / steps;
      const half = Math.sqrt(1 - y * y);
      area += Math.max(0, 2 * half - shift) * (2 / steps);
    }
    return area / Math.PI;
  }

  it.each([5, 13.3, 40, 90])('at %d cycles/mm is the overlap of two pupils', (cyclesPerMm) => {
    for (const fNumber of [2, 8, 22, 45]) {
      const x = (cyclesPerMm * 0.00055 * fNumber) as number;
      expect(diffractionContrast(cyclesPerMm, fNumber)).toBeCloseTo(overlap(2 * x), 5);
    }
  });

  // Common practice: f/64 effective is soft but still used for 1920 on 36 mm, and past use for 3840.
  it('f/64 on 36 mm: usable at 1920 pixels, past use at 3840', () => {
    const area = { width: 36, height: 20.25 };
    const at = (width: number) => {
      const size = { width, height: (width * 9) / 16 };
      const pixelUm = coarserPixelUm(area, size, size) as number;
      return diffractionContrast(nyquistPerMm(pixelUm) / 2, 64);
    };
    expect(at(1920)).toBeGreaterThan(0.4);
    expect(at(3840)).toBeLessThan(0.05);
  });
});

/**
 * P. Hansma, View Camera Focusing in Practice, 1996 (from memory): optimum f-number √(375·spread mm) for a
 * focus spread at the film. Its published table has the decimal in tenths of a stop: 22.6 is f/22 and
 * six tenths.
 */
describe('the best f-number for a focus spread (Hansma)', () => {
  const stopsApart = (a: number, b: number) => Math.abs(2 * Math.log2(a / b));

  it.each([1, 2, 3, 4, 5, 6, 10])('%d mm: √(375·spread) within 0.01 stop', (spreadMm) => {
    expect(stopsApart(bestEffectiveFNumber(spreadMm, 1), Math.sqrt(375 * spreadMm))).toBeLessThan(
      0.01,
    );
  });

  it.each([
    [1, 16, 0.6],
    [2, 22, 0.6],
    [3, 32, 0.2],
    [4, 32, 0.6],
    [5, 32, 0.9],
    [6, 45, 0.2],
    [10, 64, 0],
  ])('%d mm: f/%d and %d stop, within 0.2 stop', (spreadMm, mark, tenths) => {
    const exact = 2 ** (Math.round(2 * Math.log2(mark)) / 2);
    expect(stopsApart(bestEffectiveFNumber(spreadMm, 1), exact * 2 ** (tenths / 2))).toBeLessThan(
      0.2,
    );
  });

  // Hansma's own criterion, by brute force: of all f-numbers, the least of √(defocus² + Airy²) at the ends.
  it.each([
    [2, 1],
    [4, 0.9],
    [0.5, 3],
  ])('%d mm at %dx: no f-number leaves less blur', (depthMm, magnification) => {
    let least = Number.POSITIVE_INFINITY;
    for (let fNumber = 1; fNumber < 400; fNumber *= 1.0005) {
      const defocusUm = (1000 * depthMm * magnification ** 2) / (2 * fNumber);
      least = Math.min(least, Math.hypot(defocusUm, 2.44 * 0.55 * fNumber));
    }
    expect(Math.abs(leastBlurUm(depthMm, magnification) / least - 1)).toBeLessThan(1e-3);
  });

  it('spread at the film is depth at the subject times m²', () => {
    expect(bestEffectiveFNumber(2, 1.5)).toBeCloseTo(bestEffectiveFNumber(4.5, 1), 10);
  });
});
