import { describe, expect, it } from 'vitest';
import {
  polarisationOfReflection,
  polariserStops,
  surfaceReflectances,
} from '../../shared/exposure/polariser.ts';

const degrees = Math.PI / 180;

describe('reflection of a clear surface', () => {
  // OpenStax University Physics vol. 3, ch. 1: light from air is wholly polarised at 53.1° on water (1.333)
  // and at 56.7° on crown glass (1.52).
  it.each([
    [1.333, 53.1],
    [1.52, 56.7],
  ])('n %d: wholly polarised at %d°', (index, angle) => {
    const at = (deg: number) => polarisationOfReflection(index, deg * degrees);
    expect(at(angle)).toBeCloseTo(1, 5);
    expect(at(angle)).toBeGreaterThan(at(angle + 1));
    expect(at(angle)).toBeGreaterThan(at(angle - 1));
  });

  // Fresnel at normal incidence ((n − 1)/(n + 1))²: 4 % for n 1.5 (E. Hecht, Optics, from memory).
  it('facing it, 4 % of either polarisation at n 1.5', () => {
    const { s, p } = surfaceReflectances(1.5, 0);
    expect(s).toBeCloseTo(0.04, 12);
    expect(p).toBeCloseTo(0.04, 12);
    expect(polarisationOfReflection(1.5, 0)).toBeCloseTo(0, 12);
  });

  it('grazing, everything', () => {
    const { s, p } = surfaceReflectances(1.33, Math.PI / 2 - 1e-9);
    expect(s).toBeCloseTo(1, 7);
    expect(p).toBeCloseTo(1, 7);
  });

  it('is more polarised the farther it leans, up to the angle of Brewster', () => {
    const at = (deg: number) => polarisationOfReflection(1.33, deg * degrees);
    expect(at(4)).toBeLessThan(0.02);
    expect(at(20)).toBeGreaterThan(at(10));
    expect(at(50)).toBeGreaterThan(at(40));
  });
});

describe('a polariser on it', () => {
  // É. L. Malus's law (OpenStax University Physics vol. 3, ch. 1): half of unpolarised light passes an ideal filter.
  it('costs a stop and does nothing else to what is not polarised', () => {
    expect(polariserStops(0)).toEqual({ reflectionMost: 1, reflectionLeast: 1, unpolarised: 1 });
  });

  it('takes away all of what is wholly polarised, or nothing of it', () => {
    const { reflectionMost, reflectionLeast } = polariserStops(1);
    expect(reflectionMost).toBe(Number.POSITIVE_INFINITY);
    expect(reflectionLeast).toBeCloseTo(0, 12);
  });
});
