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
import { each } from '../support/each.ts';
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

/**
 * Two thin lenses d apart are a thick one: 1/f = 1/f1 + 1/f2 − d/(f1·f2), the front principal plane
 * f·d/f2 behind the first lens and the rear one f·d/f1 before the second (E. Hecht, Optics, "Thick
 * lenses and lens systems"). Here the pair is traced lens by lens, which knows of no principal plane.
 */
describe('a lens with its principal planes apart (Hecht)', () => {
  const pairs = [
    { name: 'two converging', first: 150, second: 120, apart: 60 },
    { name: 'a telephoto', first: 100, second: -90, apart: 60 },
    { name: 'a retrofocus', first: -90, second: 60, apart: 40 },
  ];

  it('is what two thin lenses make of it, ray by ray', () => {
    each(
      pairs,
      ({ first, second, apart }) => {
        const focalMm = 1 / (1 / first + 1 / second - apart / (first * second));
        const rearBeforeSecond = (focalMm * apart) / first;
        const gapMm = apart - rearBeforeSecond - (focalMm * apart) / second;
        // An iris at the first lens: it is the entrance pupil, and the second lens images it.
        const exitScale = second / (second - apart);
        const lens = {
          ...unitFocusing(focalMm, 0.5),
          gapMm,
          closest: { fromSensorMm: focalMm * (2 + 0.5 + 2) + gapMm, magnification: 0.5 },
          pupilRatio: exitScale,
          // The rim stands at the first lens.
          lengthMm: focalMm - rearBeforeSecond + apart - 20,
          growsMm: 0.5 * focalMm,
        };
        expect(closestFocalMm(lens.closest, gapMm)).toBeCloseTo(focalMm, 9);
        for (const ring of [0, 0.2, 0.5])
          for (const tube of [10, 36]) {
            const parts = [
              { kind: 'body', flangeMm: 20 },
              { kind: 'tube', lengthMm: tube },
            ] as const;
            const trace = traceChain(chainOf(...parts, lens), ring);
            // From the sensor forward, ray by ray.
            const toSecond = tube + focalMm * (1 + ring) - rearBeforeSecond;
            const steps = [
              travel(toSecond),
              thinLens(1 / second),
              travel(apart),
              thinLens(1 / first),
            ];
            const through = steps.reduce(followedBy, nothing);
            const room = -through.b / through.d;
            expect(trace.magnification! / -through.d).toBeCloseTo(1, 9);
            expect(trace.workingDistanceMm! / room).toBeCloseTo(1, 9);
            expect(trace.subjectToSensorMm! / (room + apart + toSecond)).toBeCloseTo(1, 9);
            expect(trace.pupilDistanceMm! / room).toBeCloseTo(1, 9);
            // A ray to the iris's edge, f/(2N) high, leaves the sensor at a slope of that over b.
            expect(trace.fNumberRatio / (Math.abs(through.b) / focalMm)).toBeCloseTo(1, 9);
          }
      },
      ({ name }) => name,
    );
  });
});

describe('closest focus', () => {
  // Thin-lens equation: at 1:1 subject and image stand 2f each, 4f apart.
  it('a lens that reaches 1:1 at 400 mm has 100 mm there', () => {
    expect(closestFocalMm({ fromSensorMm: 400, magnification: 1 })).toBeCloseTo(100, 12);
  });
});
