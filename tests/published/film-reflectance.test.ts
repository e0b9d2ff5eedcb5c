import { describe, expect, it } from 'vitest';
import { filmReflectance, finesse, peakReflectance } from '../../shared/film/reflectance.ts';

describe('thin films in air', () => {
  // OpenStax, University Physics vol. 3, ch. 4 (interference in thin films): n 1.333, 650 nm,
  // three thinnest films that look bright, and three that look dark; printed to 1 nm.
  const at650 = (thicknessNm: number): number => filmReflectance(thicknessNm, 650, 1.333);

  it.each([122, 366, 610])('%i nm is bright', (thicknessNm) => {
    expect(at650(thicknessNm)).toBeCloseTo(peakReflectance(1.333), 4);
    for (const other of [thicknessNm - 10, thicknessNm + 10])
      expect(at650(other)).toBeLessThan(at650(thicknessNm));
  });

  it.each([0, 244, 488])('%i nm is dark', (thicknessNm) => {
    expect(at650(thicknessNm)).toBeLessThan(1e-5);
  });

  // Closed form of two equal faces in phase: ((n² − 1)/(n² + 1))², 0.07711 at n 1.33.
  it('returns 7.711 % at most at n 1.33', () => {
    expect(peakReflectance(1.33)).toBeCloseTo(0.07711, 5);
    expect(peakReflectance(1.33)).toBeCloseTo(((1.33 ** 2 - 1) / (1.33 ** 2 + 1)) ** 2, 12);
  });

  // OpenStax, University Physics vol. 3, ch. 1: the polarising angle of water, n 1.333, is 53.1° (from memory).
  it('returns no light of one polarisation at 53.1°', () => {
    const { s, p } = finesse(1.333, (53.1 * Math.PI) / 180);
    expect(p).toBeLessThan(1e-6);
    expect(s).toBeGreaterThan(0.3);
  });

  // A direct sum of the beams, without the closed form: first face, then every inner bounce.
  it('agrees with the sum of its beams', () => {
    for (const degrees of [0, 20, 45, 70])
      for (const thicknessNm of [40, 210, 1234]) {
        const theta = (degrees * Math.PI) / 180;
        const summed =
          (summedBeams(thicknessNm, theta, 's') + summedBeams(thicknessNm, theta, 'p')) / 2;
        expect(filmReflectance(thicknessNm, 532, 1.4, theta)).toBeCloseTo(summed, 10);
      }
  });
});

function summedBeams(thicknessNm: number, theta: number, polarisation: 's' | 'p'): number {
  const index = 1.4;
  const inside = Math.asin(Math.sin(theta) / index);
  const r =
    polarisation === 's'
      ? -Math.sin(theta - inside) / Math.sin(theta + inside || 1)
      : Math.tan(theta - inside) / Math.tan(theta + inside || 1);
  const face = theta === 0 ? (1 - index) / (1 + index) : r;
  const phase = (4 * Math.PI * index * thicknessNm * Math.cos(inside)) / 532;
  let [re, im] = [face, 0];
  for (let bounce = 1; bounce < 60; bounce += 1) {
    // t·t′ = 1 − r², and each further bounce meets the inner face, of amplitude −r.
    const amplitude = (1 - face * face) * (-face) ** (2 * bounce - 1);
    re += amplitude * Math.cos(bounce * phase);
    im += amplitude * Math.sin(bounce * phase);
  }
  return re * re + im * im;
}
