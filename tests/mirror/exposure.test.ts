import { describe, expect, it } from 'vitest';
import { averageReflectance } from '../../shared/film/reflectance.ts';
import { backgroundStopsBelow, mirrorLuminance, strayRatio } from '../../shared/mirror/exposure.ts';

describe('light returned by a mirror-like subject', () => {
  it('is its reflectance of the light’s own luminance', () => {
    expect(mirrorLuminance(0.04, 3000)).toBeCloseTo(120, 9);
  });

  it('is washed by the background: 1:20 needs it 9 stops below the light', () => {
    const reflectance = averageReflectance(1.33);
    const stops = backgroundStopsBelow(reflectance, 1 / 20);
    expect(stops).toBeCloseTo(9, 1);
    expect(strayRatio(3000 * 2 ** -stops, reflectance, 3000)).toBeCloseTo(1 / 20, 9);
  });

  it('refuses a reflectance over 1 and a film that returns nothing', () => {
    expect(() => mirrorLuminance(1.2, 100)).toThrow(/reflectance/);
    expect(() => strayRatio(10, 0, 100)).toThrow(/luminance of the film/);
    expect(() => backgroundStopsBelow(0.04, 0)).toThrow(/stray ratio/);
  });
});
