import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BubbleView,
  type BubbleWall,
  imageOfOutline,
  imagePoint,
  rimOutline,
} from '../../shared/mirror/bubble-image.ts';
import { sourceOutline } from '../../shared/mirror/source.ts';
import type { Vec } from '../../shared/mirror/vector.ts';
import { frontImage, rearImage } from '../support/spherical-mirror.ts';

const r = 35;
const far = 1e7;

/** A pupil so far off that all its rays run along the axis. */
const FAR: BubbleView = {
  radiusMm: r,
  pupilFromCentreMm: far,
  focusFromCentreMm: r,
  pupilMm: 0,
  pixelsPerMm: 1,
};

const NEAR: BubbleView = {
  radiusMm: r,
  pupilFromCentreMm: 435,
  focusFromCentreMm: r,
  pupilMm: 12.5,
  pixelsPerMm: 80,
};

const WALLS: readonly BubbleWall[] = ['front', 'rear'];

describe('images in a bubble', () => {
  it('of a far light at θ stand at r·sin(θ/2): never outside the bubble', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1.5, noNaN: true }), (theta) => {
        const at: Vec = [far * Math.sin(theta), 0, far * Math.cos(theta)];
        expect(imagePoint(FAR, at, 'front')?.xMm).toBeCloseTo(r * Math.sin(theta / 2), 3);
        expect(imagePoint(FAR, at, 'rear')?.xMm).toBeCloseTo(-r * Math.sin(theta / 2), 3);
      }),
    );
  });

  it('obey the law of reflection', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1.2, max: 1.2, noNaN: true }),
        fc.double({ min: 80, max: 900, noNaN: true }),
        fc.constantFrom(...WALLS),
        (theta, distance, wall) => {
          const object = [distance * Math.sin(theta), distance * Math.cos(theta)] as const;
          const image = imagePoint(NEAR, [object[0], 0, object[1]], wall);
          if (image === null) throw new Error('in the shadow');
          const e = NEAR.pupilFromCentreMm;
          // From the pupil through the image's place in the plane of focus, on to the wall.
          const d = [image.xMm, r - e] as const;
          const dd = d[0] ** 2 + d[1] ** 2;
          const root = Math.sqrt((e * d[1]) ** 2 - dd * (e * e - r * r));
          const t = (-e * d[1] + (wall === 'front' ? -root : root)) / dd;
          const q = [t * d[0], e + t * d[1]] as const;
          const sign = wall === 'front' ? 1 : -1;
          const n = [(sign * q[0]) / r, (sign * q[1]) / r] as const;
          const cosTo = (p: readonly [number, number]): number => {
            const v = [p[0] - q[0], p[1] - q[1]] as const;
            return (v[0] * n[0] + v[1] * n[1]) / Math.hypot(...v);
          };
          expect(cosTo([0, e])).toBeCloseTo(cosTo(object), 7);
        },
      ),
    );
  });

  it('near the axis are those of the mirror equation: size, side and blur', () => {
    for (const wall of WALLS) {
      const s = 365;
      const half = 0.5;
      const point = imagePoint(NEAR, [half, 0, s + r], wall);
      const paraxial = wall === 'front' ? frontImage(r, s) : rearImage(r, s);
      // The frame shows the image in perspective: scaled from its own distance to the focus's.
      const u = NEAR.pupilFromCentreMm - r;
      const away = u + paraxial.behindVertexMm;
      expect(point?.xMm).toBeCloseTo((half * paraxial.magnification * u) / away, 4);
      expect(point?.blurMm).toBeCloseTo((NEAR.pupilMm * paraxial.behindVertexMm) / away, 3);
    }
  });

  it('of the rim are round and in the middle; of a light above, above in front, below behind', () => {
    const rim = rimOutline(82, 400);
    const front = imageOfOutline(NEAR, rim, 'front');
    const rear = imageOfOutline(NEAR, rim, 'rear');
    expect(front?.xPx).toBeCloseTo(0, 6);
    expect(front?.widthPx).toBeCloseTo(front?.heightPx ?? 0, 6);
    expect(front?.widthPx).toBeCloseTo(
      2 * 41 * frontImage(r, 365).magnification * 80 * (400 / 416.7),
      -1,
    );
    expect(rear?.widthPx).toBeGreaterThan(0);
    const panel = sourceOutline({
      face: { shape: 'rectangle', widthMm: 300, heightMm: 200 },
      distanceMm: 500,
      upRad: 0.8,
      acrossRad: 0.2,
    });
    const inFront = imageOfOutline(NEAR, panel, 'front');
    const behind = imageOfOutline(NEAR, panel, 'rear');
    expect(inFront?.yPx).toBeGreaterThan(0);
    expect(inFront?.xPx).toBeGreaterThan(0);
    expect(behind?.yPx).toBeLessThan(0);
    expect(behind?.xPx).toBeLessThan(0);
    expect(inFront?.blurPx).toBeGreaterThan(0);
  });

  it('of a light right behind the bubble are none in front', () => {
    expect(imagePoint(NEAR, [0, 1, -400], 'front')).toBeNull();
  });

  it('refuse what is inside the bubble', () => {
    expect(() => imagePoint(NEAR, [0, 0, 20], 'front')).toThrow(/distance to the bubble/);
    expect(() => imagePoint({ ...NEAR, pupilFromCentreMm: 20 }, [0, 0, 90], 'rear')).toThrow(
      /pupil/,
    );
  });
});
