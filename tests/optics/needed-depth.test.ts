import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  axialTravelMm,
  slideTravelMm,
  sphereDepthMm,
  tiltedPlaneDepthMm,
} from '../../shared/optics/needed-depth.ts';
import { panSpeedMmPerS, smearPx } from '../../shared/optics/smear.ts';

const degrees = Math.PI / 180;

describe('a tilted plane', () => {
  it('is as deep as the frame sees of it', () => {
    expect(tiltedPlaneDepthMm({ tiltRad: 45 * degrees, fieldMm: 10 })).toBeCloseTo(10, 12);
    const small = { tiltRad: 30 * degrees, fieldMm: 100, subjectMm: 10 };
    expect(tiltedPlaneDepthMm(small)).toBeCloseTo(5, 12);
    expect(tiltedPlaneDepthMm({ ...small, bowMm: 0.4 })).toBeCloseTo(5.4, 12);
    expect(tiltedPlaneDepthMm({ tiltRad: 0, fieldMm: 24, bowMm: 0.2 })).toBe(0.2);
  });
});

describe('a sphere', () => {
  /** A circle in the plane of the axis, point by point: which of it the frame shows, and how far back. */
  function deepestSeen(radius: number, halfDiagonal: number, pupilDistance: number): number {
    const seenWith = (ahead: number): number => {
      let deepest = 0;
      for (let step = 0; step <= 20_000; step++) {
        const angle = (step / 20_000) * Math.PI;
        const back = radius * (1 - Math.cos(angle));
        const across = radius * Math.sin(angle);
        const toPupil = pupilDistance - ahead + back;
        const inFrame = Math.abs(across / toPupil) <= halfDiagonal / Math.abs(pupilDistance);
        const facing = Math.cos(angle) * toPupil - Math.sin(angle) * across;
        if (facing * Math.sign(pupilDistance) < 0 || !inFrame) break;
        deepest = back;
      }
      return deepest;
    };
    let [low, high] = [0, 2 * radius];
    for (let step = 0; step < 40; step++) {
      const ahead = (low + high) / 2;
      const far = seenWith(ahead) - ahead;
      if (ahead / Math.abs(pupilDistance - ahead) > far / Math.abs(pupilDistance + far))
        high = ahead;
      else low = ahead;
    }
    return seenWith(low);
  }

  it.each([
    [35, 12, 400],
    [35, 33, 400],
    [35, 60, 400],
    [35, 34.9, 60],
    [5, 100, 30],
    [35, 20, -400],
    [35, 60, -400],
  ])(
    'r %d mm, half-diagonal %d mm, pupil at %d mm',
    (radiusMm, halfDiagonalMm, pupilDistanceMm) => {
      const found = sphereDepthMm({ radiusMm, halfDiagonalMm, pupilDistanceMm });
      expect(found / deepestSeen(radiusMm, halfDiagonalMm, pupilDistanceMm)).toBeCloseTo(1, 2);
    },
  );

  it('seen in parallel is what Pythagoras says', () => {
    const far = { radiusMm: 35, halfDiagonalMm: 21, pupilDistanceMm: Number.POSITIVE_INFINITY };
    expect(sphereDepthMm(far)).toBeCloseTo(7, 9);
    expect(sphereDepthMm({ ...far, pupilDistanceMm: 1e7 })).toBeCloseTo(7, 3);
  });

  it('seen from infinity down to its middle', () => {
    const far = { radiusMm: 20, halfDiagonalMm: 90, pupilDistanceMm: Number.POSITIVE_INFINITY };
    expect(sphereDepthMm(far)).toBeCloseTo(20, 9);
  });

  it('never deeper than its radius', () => {
    const size = fc.double({ min: 0.1, max: 500, noNaN: true });
    fc.assert(
      fc.property(size, size, size, (radiusMm, halfDiagonalMm, pupilDistanceMm) => {
        const depth = sphereDepthMm({ radiusMm, halfDiagonalMm, pupilDistanceMm });
        expect(depth).toBeGreaterThan(0);
        expect(depth).toBeLessThanOrEqual(radiusMm);
      }),
    );
  });
});

describe('travel', () => {
  it('2 mm/s for 60 s along a film 4° off drifts 8.4 mm', () => {
    expect(slideTravelMm(2, 60, 4 * degrees).toFixed(1)).toBe('8.4');
    expect(slideTravelMm(-2, 60, 4 * degrees).toFixed(1)).toBe('8.4');
  });

  it('all of it along the axis, none across', () => {
    expect(axialTravelMm(2, 60)).toBe(120);
    expect(axialTravelMm(2, 60, Math.PI / 2)).toBeCloseTo(0, 12);
  });
});

describe('motion-blur', () => {
  const moving = { speedMmPerS: 5, timeS: 0.02, magnification: 1.5, pixelUm: 18.75 };

  it('5 mm/s for 1/50 s at 1.5x is 8 pixels of 18.75 µm', () => {
    expect(smearPx(moving)).toBeCloseTo(8, 12);
    expect(smearPx({ ...moving, speedMmPerS: -5 })).toBeCloseTo(8, 12);
  });

  it('a pan of 1°/s at 600 mm moves 10.5 mm/s', () => {
    expect(panSpeedMmPerS(degrees, 600)).toBeCloseTo(10.472, 3);
  });
});
