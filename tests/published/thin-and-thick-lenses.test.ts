import { describe, expect, it } from 'vitest';
import { traceChain } from '../../shared/optics/chain.ts';
import { closestFocalMm } from '../../shared/optics/focal-length.ts';
import {
  followedBy,
  nothing,
  type RayMatrix,
  thinLens,
  travel,
} from '../../shared/optics/ray-matrix.ts';
import { chainOf, unitFocusing } from './support/chains.ts';

/** The thin-lens pairs are numbers from OpenStax University Physics vol. 3, ch. 2, and College Physics, ch. 25. */
describe('thin lenses (OpenStax)', () => {
  /** A lens alone, its ring set so that the lens stands this far from the sensor. */
  function lensAt(focalMm: number, imageMm: number) {
    const ring = imageMm / focalMm - 1;
    const chain = chainOf({ kind: 'body', flangeMm: 20 }, unitFocusing(focalMm, 1));
    const trace = traceChain(chain, ring);
    return { magnification: trace.magnification!, objectMm: trace.subjectToSensorMm! - imageMm };
  }

  it('f 22 mm, 33 mm from lens to film: object at 66.0 mm, magnification 0.500', () => {
    const { magnification, objectMm } = lensAt(22, 33);
    expect(objectMm).toBeCloseTo(66.0, 9);
    expect(magnification).toBeCloseTo(0.5, 12);
  });

  it('f 50 mm, image at 51 mm: object at 2.55 m', () => {
    expect(lensAt(50, 51).objectMm).toBeCloseTo(2550, 6);
  });

  it('f 50 mm, object at 3.00 m: image at 50.8 mm, magnification 0.01695', () => {
    const { magnification, objectMm } = lensAt(50, 50.8475);
    expect(objectMm / 3000).toBeCloseTo(1, 4);
    expect(magnification).toBeCloseTo(0.01695, 5);
    const image = 50 * (1 + magnification);
    expect(image.toFixed(1)).toBe('50.8');
  });

  it('object 25 cm ahead of f −20 cm, then 5 cm, then f +20 cm: image at −82.857 cm, magnification +2.2857', () => {
    // The book rounds on the way and prints −83 cm and −2.3, its sign for the object's own; exactly:
    const steps = [travel(25), thinLens(1 / -20), travel(5), thinLens(1 / 20)];
    const through = steps.reduce(followedBy, nothing);
    const imageCm = -through.b / through.d;
    expect(imageCm).toBeCloseTo(-82.857, 3);
    expect(1 / through.d).toBeCloseTo(2.2857, 4);
  });
});

/**
 * W. J. Smith, Modern Lens Design, p. 304: a double Gauss, surface by surface. The book gives a focal
 * length of 100.1 and a back focus of 56.42.
 */
describe('a thick lens, surface by surface (Smith)', () => {
  const radii = [93.32, 358.29, 46.32, Infinity, 28.68, Infinity, -41.32, 60.8, -55, 90.2, -212.58];
  const gaps = [11.32, 0.4, 20, 2, 14, 10, 6, 22, 13, 16];
  const indices = [1.717, 1, 1.643, 1.589, 1, 1, 1.762, 1.744, 1, 1.717, 1];

  /** Refraction at a sphere, on slopes in air-equivalent form: n′u′ = n·u − y·(n′ − n)/R. */
  function surface(before: number, after: number, radius: number): RayMatrix {
    return thinLens((after - before) / radius);
  }

  const lens = radii.reduce<RayMatrix>((through, radius, index) => {
    const before = indices[index - 1] ?? 1;
    const after = indices[index] as number;
    const refracted = followedBy(through, surface(before, after, radius));
    const gap = gaps[index];
    return gap === undefined ? refracted : followedBy(refracted, travel(gap / after));
  }, nothing);

  it('keeps areas: determinant 1', () => {
    expect(lens.a * lens.d - lens.b * lens.c).toBeCloseTo(1, 9);
  });

  it('focal length 100.1 within 0.1 %', () => {
    expect(Math.abs(-1 / lens.c / 100.1 - 1)).toBeLessThan(0.001);
  });

  it('back focus 56.42 within 0.1 %', () => {
    expect(Math.abs(-lens.a / lens.c / 56.42 - 1)).toBeLessThan(0.001);
  });
});

describe('closest focus', () => {
  // Thin-lens equation: at 1:1 subject and image stand 2f each, 4f apart.
  it('a lens that reaches 1:1 at 400 mm has 100 mm there', () => {
    expect(closestFocalMm({ fromSensorMm: 400, magnification: 1 })).toBeCloseTo(100, 12);
  });
});
