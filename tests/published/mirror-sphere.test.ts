import { describe, expect, it } from 'vitest';
import { frontImage, rearImage } from '../support/spherical-mirror.ts';

describe('spherical mirrors', () => {
  // OpenStax, College Physics, ch. 25: the cornea as a convex mirror. Object at 12 cm, magnified
  // .032: image .384 cm behind, radius .793 cm (the book rounds it to .80: 1 %).
  it('convex: the front of a bubble', () => {
    const image = frontImage(7.93, 120);
    expect(Math.abs(image.magnification / 0.032 - 1)).toBeLessThan(0.01);
    expect(Math.abs(image.behindVertexMm / 3.84 - 1)).toBeLessThan(0.01);
    expect(Math.abs(frontImage(8, 120).magnification / 0.032 - 1)).toBeLessThan(0.01 + 0.005);
  });

  // OpenStax, University Physics vol. 3, ch. 2: a concave mirror of radius 80 cm brings the sun's
  // light together at 40 cm (from memory).
  it('concave: the rear of a bubble, for a distant light', () => {
    const image = rearImage(800, 1e9);
    expect(1600 - image.behindVertexMm).toBeCloseTo(400, 3);
    expect(image.magnification).toBeLessThan(0);
  });

  // The mirror equation 1/s + 1/s′ = 2/r, m = −s′/s, worked here for both walls.
  it('satisfy the mirror equation', () => {
    for (const [r, s] of [
      [35, 150],
      [35, 400],
      [3, 60],
      [60, 5],
    ] as const) {
      const front = frontImage(r, s);
      expect(1 / s - 1 / front.behindVertexMm).toBeCloseTo(-2 / r, 12);
      expect(front.magnification).toBeCloseTo(front.behindVertexMm / s, 12);
      const rear = rearImage(r, s);
      const beforeRear = 2 * r - rear.behindVertexMm;
      expect(1 / (s + 2 * r) + 1 / beforeRear).toBeCloseTo(2 / r, 12);
      expect(rear.magnification).toBeCloseTo(-beforeRear / (s + 2 * r), 12);
    }
  });
});
