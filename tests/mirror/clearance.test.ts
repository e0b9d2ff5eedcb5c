import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  distanceToCylinderMm,
  faceClearanceMm,
  hiddenShare,
  lensCylinder,
  searchedClearanceMm,
} from '../../shared/mirror/clearance.ts';
import { onPlane, planeOf, type Source } from '../../shared/mirror/source.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const LENS = lensCylinder(400, 300, 82);
const VIEW = { widthMm: 24, heightMm: 13.5, pupilDistanceMm: 460, pupilMm: 12.5 };

const light = (over: Partial<Source>): Source => ({
  face: { shape: 'rectangle', widthMm: 600, heightMm: 400 },
  distanceMm: 500,
  upRad: rad(26),
  acrossRad: 0,
  ...over,
});

describe('distances', () => {
  it('to a cylinder: beside, before, at the rim’s edge, inside', () => {
    expect(distanceToCylinderMm([100, 0, 500], LENS)).toBeCloseTo(59, 9);
    expect(distanceToCylinderMm([0, 0, 380], LENS)).toBeCloseTo(20, 9);
    expect(distanceToCylinderMm([44, 0, 396], LENS)).toBeCloseTo(5, 9);
    expect(distanceToCylinderMm([0, 40, 500], LENS)).toBeCloseTo(-1, 9);
  });

  it('from a face: what a walk over the face finds, and no more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: rad(-10), max: rad(80), noNaN: true }),
        fc.double({ min: rad(-40), max: rad(40), noNaN: true }),
        fc.double({ min: 150, max: 900, noNaN: true }),
        fc.boolean(),
        (upRad, acrossRad, distanceMm, round) => {
          const source = light({
            upRad,
            acrossRad,
            distanceMm,
            ...(round ? { face: { shape: 'round' as const, diameterMm: 300 } } : {}),
          });
          const found = faceClearanceMm(source, LENS);
          expect(found).toBeCloseTo(searchedClearanceMm(source, LENS), 2);
          const plane = planeOf(source);
          const [halfWidth, halfHeight] = round ? [150, 150] : [300, 200];
          let walked = Number.POSITIVE_INFINITY;
          for (let i = -40; i <= 40; i += 1)
            for (let j = -40; j <= 40; j += 1) {
              const [right, up] = [(i / 40) * halfWidth, (j / 40) * halfHeight];
              if (round && Math.hypot(right, up) > 150) continue;
              walked = Math.min(walked, distanceToCylinderMm(onPlane(plane, right, up), LENS));
            }
          // The distance is found to a millionth of itself.
          expect(found).toBeLessThanOrEqual(walked + 2e-6 * (1 + Math.abs(walked)));
          expect(found).toBeGreaterThan(walked - 9);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('tells a light that stands in the lens from one that stands clear', () => {
    expect(faceClearanceMm(light({ upRad: rad(10) }), LENS)).toBeLessThan(0);
    expect(faceClearanceMm(light({ upRad: rad(70) }), LENS)).toBeGreaterThan(50);
  });

  it('refuses a body without extent', () => {
    expect(() => distanceToCylinderMm([0, 0, 0], lensCylinder(400, 0, 82))).toThrow(/length/);
    expect(() => distanceToCylinderMm([0, 0, 0], lensCylinder(400, 10, 0))).toThrow(/diameter/);
  });
});

describe('a light in the way', () => {
  it('hides nothing from beside, from behind the subject, or from behind the pupil', () => {
    expect(hiddenShare(VIEW, light({ upRad: rad(70), distanceMm: 400 }))).toBe(0);
    expect(hiddenShare(VIEW, light({ acrossRad: Math.PI, upRad: 0 }))).toBe(0);
    expect(hiddenShare(VIEW, light({ upRad: 0, distanceMm: 500 }))).toBe(0);
  });

  it('hides all, or the part that it stands before', () => {
    expect(hiddenShare(VIEW, light({ upRad: 0, distanceMm: 200 }))).toBeCloseTo(1, 9);
    // A face whose lower edge is on the axis hides the upper half.
    const half = light({
      face: { shape: 'rectangle', widthMm: 600, heightMm: 2 * 200 * Math.tan(rad(30)) },
      distanceMm: 200,
      upRad: rad(30),
    });
    expect(hiddenShare(VIEW, half)).toBeCloseTo(0.5, 6);
  });
});
