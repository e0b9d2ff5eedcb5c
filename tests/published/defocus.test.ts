import { describe, expect, it } from 'vitest';
import { contrastOverDepth, defocusedContrast } from '../../shared/optics/defocus-contrast.ts';
import { diffractionContrast, WAVELENGTH_UM } from '../../shared/optics/diffraction.ts';

/**
 * The optical transfer function by its definition: the pupil function with its defocus phase, correlated
 * with itself over a fine grid (J. W. Goodman, Introduction to Fourier Optics, "the OTF as the
 * autocorrelation of the pupil function"). Defocus as a wavefront: w20·ρ², w20 = b/(8·N).
 */
function byAutocorrelation(cyclesPerMm: number, fNumber: number, blurMm: number): number {
  const wavelengthMm = WAVELENGTH_UM / 1000;
  const shift = 2 * cyclesPerMm * wavelengthMm * fNumber;
  const phase = (x: number, y: number) =>
    ((2 * Math.PI) / wavelengthMm) * (blurMm / (8 * fNumber)) * (x * x + y * y);
  const steps = 1200;
  let sum = 0;
  for (let row = 0; row < steps; row++) {
    const y = -1 + (2 * (row + 0.5)) / steps;
    // In each row the overlap of the two circles is one stretch; Simpson's rule along it.
    const half = Math.sqrt(1 - y * y) - shift / 2;
    if (half <= 0) continue;
    const cells = 64;
    for (let cell = 0; cell <= cells; cell++) {
      const x = half * ((2 * cell) / cells - 1);
      const weight = cell === 0 || cell === cells ? 1 : cell % 2 === 1 ? 4 : 2;
      const difference = phase(x + shift / 2, y) - phase(x - shift / 2, y);
      sum += (weight / 3) * ((2 * half) / cells) * Math.cos(difference) * (2 / steps);
    }
  }
  return sum / Math.PI;
}

describe('contrast under defocus and diffraction', () => {
  const frequencies = [4, 13.3, 26.7];
  const fNumbers = [4, 16, 45, 62];
  const blurs = [0.005, 0.02, 0.05, 0.12];

  it('is the autocorrelation of the defocused pupil', () => {
    for (const cyclesPerMm of frequencies) {
      for (const effectiveFNumber of fNumbers) {
        for (const blurMm of blurs) {
          const expected = byAutocorrelation(cyclesPerMm, effectiveFNumber, blurMm);
          const found = defocusedContrast({ cyclesPerMm, effectiveFNumber, blurMm });
          const what = `${cyclesPerMm}/mm f/${effectiveFNumber} ${blurMm} mm`;
          expect(Math.abs(found - expected), what).toBeLessThan(1e-4);
        }
      }
    }
  });

  it('without defocus it is that of diffraction, nearly without it too', () => {
    for (const effectiveFNumber of fNumbers) {
      const cyclesPerMm = 13.3;
      const alone = diffractionContrast(cyclesPerMm, effectiveFNumber);
      expect(defocusedContrast({ cyclesPerMm, effectiveFNumber, blurMm: 0 })).toBe(alone);
      const nearly = defocusedContrast({ cyclesPerMm, effectiveFNumber, blurMm: 1e-9 });
      expect(nearly).toBeCloseTo(alone, 8);
    }
  });

  // Geometric limit of an evenly lit blur disk, 2·J1(α)/α with α = π·v·b; J1 from Abramowitz and Stegun (from memory),
  // table 9.1: J1(1) = 0.4400505857, J1(2) = 0.5767248078, J1(5) = −0.3275791376.
  it.each([
    [1, 0.4400505857],
    [2, 0.5767248078],
    [5, -0.3275791376],
  ])('at vanishing diffraction it is 2·J1(%d)/%d', (alpha, j1) => {
    const cyclesPerMm = 0.01;
    const blurMm = alpha / Math.PI / cyclesPerMm;
    const found = defocusedContrast({ cyclesPerMm, effectiveFNumber: 0.01, blurMm });
    expect(found).toBeCloseTo((2 * j1) / alpha, 6);
  });

  it('is nothing at the cut-off and dies away with defocus', () => {
    const cutOff = 1000 / (WAVELENGTH_UM * 64);
    expect(defocusedContrast({ cyclesPerMm: cutOff, effectiveFNumber: 64, blurMm: 0.01 })).toBe(0);
    for (const blurMm of [5, 50, 5000]) {
      const left = defocusedContrast({ cyclesPerMm: 13.3, effectiveFNumber: 8, blurMm });
      expect(Math.abs(left)).toBeLessThan(0.001);
    }
  });
});

// Common practice: stopping down costs the plane of focus and at first helps what lies off it.
describe('contrast over a depth', () => {
  const pattern = { depthMm: 1.2, magnification: 1.5, cyclesPerMm: 13.33 };

  it('narrower apertures cost the middle and at first help the ends', () => {
    const curve = contrastOverDepth(pattern, [8, 16, 32, 45, 64, 90]);
    for (const [index, point] of curve.entries()) {
      const before = curve[index - 1];
      if (before) expect(point.middle).toBeLessThan(before.middle);
      expect(point.ends).toBeLessThanOrEqual(point.middle);
    }
    expect(curve[3]!.ends).toBeGreaterThan(curve[1]!.ends);
  });
});
