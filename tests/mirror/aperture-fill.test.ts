/**
 * How much of the aperture a light fills. Outside: the law of reflection by rays (Hecht, Optics, 4.3), and
 * similar triangles for a small square lamp; the exposure follows the solid angle of the pupil that is
 * lit (camera equation; W. J. Smith, Modern Optical Engineering, ch. 8, from memory).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apertureFill } from '../../shared/mirror/aperture-fill.ts';
import { bowCurvaturePerMm, filmSurface } from '../../shared/mirror/film-surface.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';

const rad = (deg: number) => (deg * Math.PI) / 180;
const VIEW = { widthMm: 24, heightMm: 13.5, pupilDistanceMm: 400, pupilMm: 30 };

const square = (sideMm: number, distanceMm: number, upDeg: number) =>
  ({
    face: { shape: 'rectangle', widthMm: sideMm, heightMm: sideMm },
    distanceMm,
    upRad: rad(upDeg),
    acrossRad: 0,
  }) as const;

/** Best share over a grid of the frame: points of the pupil whose ray by the film ends in the lamp. */
function byRays(tiltDeg: number, sideMm: number, distance: number, upDeg: number): number {
  const [ny, nz] = [Math.sin(rad(tiltDeg)), Math.cos(rad(tiltDeg))];
  const [ey, ez] = [Math.sin(rad(upDeg)), Math.cos(rad(upDeg))];
  const u = VIEW.pupilDistanceMm;
  let best = 0;
  for (let row = 0; row <= 27; row += 1) {
    // A point of the film: the plane through the middle, met by the ray from the pupil's middle.
    const y = (row / 27 - 0.5) * VIEW.heightMm;
    const t = (nz * u) / (nz * u - ny * y);
    const [qy, qz] = [y * t, u - u * t];
    let [all, lit] = [0, 0];
    for (let i = 0; i < 60; i += 1)
      for (let j = 0; j < 60; j += 1) {
        const [px, py] = [(i - 29.5) / 2, (j - 29.5) / 2];
        if (Math.hypot(px, py) > 15) continue;
        all += 1;
        const [vx, vy, vz] = [px, py - qy, u - qz];
        const k = 2 * (vy * ny + vz * nz);
        const [rx, ry, rz] = [-vx, k * ny - vy, k * nz - vz];
        const s = (distance - qy * ey - qz * ez) / (ry * ey + rz * ez);
        if (!(s > 0)) continue;
        const up = (qy + s * ry) * ez - (qz + s * rz) * ey;
        if (Math.abs(s * rx) <= sideMm / 2 && Math.abs(up) <= sideMm / 2) lit += 1;
      }
    best = Math.max(best, lit / all);
  }
  return best;
}

describe('the share of the aperture that a light fills', () => {
  it('is that of rays, where it fills most', () => {
    let partly = 0;
    fc.assert(
      fc.property(
        fc.record({
          tilt: fc.integer({ min: 2, max: 20 }),
          side: fc.integer({ min: 5, max: 60 }),
          distance: fc.integer({ min: 150, max: 700 }),
          off: fc.integer({ min: -4, max: 4 }),
        }),
        ({ tilt, side, distance, off }) => {
          const up = 2 * tilt + off;
          const found = apertureFill(VIEW, filmSurface(rad(tilt)), square(side, distance, up));
          expect(Math.abs(found - byRays(tilt, side, distance, up))).toBeLessThan(0.04);
          if (found > 0.03 && found < 1) partly += 1;
        },
      ),
      { numRuns: manyRuns(25) },
    );
    expect(partly).toBeGreaterThan(manyRuns(25) / 6);
  });

  it('is a small lamp’s image over the pupil: similar triangles through a point of the film', () => {
    // Straight in the mirrored direction, seen square: w·u/d wide at the pupil.
    const side = 8;
    const found = apertureFill(VIEW, filmSurface(rad(10)), square(side, 300, 20));
    const width = (side * VIEW.pupilDistanceMm) / 300;
    expect(found).toBeCloseTo(width ** 2 / (Math.PI * 15 ** 2), 2);
  });

  it('is all of it where a lamp is large, and nothing where the film does not look', () => {
    expect(apertureFill(VIEW, filmSurface(rad(10)), square(200, 300, 20))).toBe(1);
    expect(apertureFill(VIEW, filmSurface(rad(10)), square(200, 300, 70))).toBe(0);
    expect(apertureFill({ ...VIEW, pupilMm: 0 }, filmSurface(rad(10)), square(8, 300, 20))).toBe(1);
  });

  it('of a film that bows toward the lens is smaller: it shrinks what it shows', () => {
    const bowed = filmSurface(rad(10), 'level', bowCurvaturePerMm(1, 60));
    const flat = apertureFill(VIEW, filmSurface(rad(10)), square(8, 300, 20));
    expect(apertureFill(VIEW, bowed, square(8, 300, 20))).toBeCloseTo(flat, 2);
    expect(apertureFill(VIEW, bowed, square(200, 300, 20))).toBe(1);
  });
});

describe('the exposure of a film by a small lamp', () => {
  const exposed = (change: Readonly<Record<string, string>>) =>
    coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('skin') as unknown as {
      exposureErrorStops: number;
      blackShare: number;
      dimShare: number;
    };
  /** The direction that the film mirrors. */
  const at = '{ distance: 300 mm, elevation: 8 deg }';

  it('falls by the share of the aperture that it fills', () => {
    const full = exposed({ 'lights/strip/at': at });
    const stops = [5, 4, 2].map((side) => {
      const one = exposed({
        'lights/strip/at': at,
        'lights/strip/emitting-size': `240 x ${side} mm`,
      });
      // No point of the frame sees it from all of the pupil.
      expect(one.blackShare + one.dimShare).toBeCloseTo(1, 6);
      return one.exposureErrorStops - full.exposureErrorStops;
    });
    expect(stops[2]!).toBeLessThan(-0.2);
    // A slit over the middle of a disc takes (2/π)(asin k + k·√(1 − k²)) of it, k its height over the
    // diameter: the height from one, the shares of the others by it.
    const shareOf = (k: number) => (2 / Math.PI) * (Math.asin(k) + k * Math.sqrt(1 - k * k));
    let [low, high] = [0, 0.5];
    for (let step = 0; step < 50; step += 1)
      if (shareOf((low + high) / 2) < 2 ** stops[2]!) low = (low + high) / 2;
      else high = (low + high) / 2;
    expect(stops[1]!).toBeCloseTo(Math.log2(shareOf(2 * low)), 1);
    expect(stops[0]!).toBeCloseTo(Math.log2(shareOf(2.5 * low)), 1);
  });

  it('is that of R·L where any point of the frame sees it from the whole aperture', () => {
    const full = exposed({ 'lights/strip/at': at });
    const part = exposed({ 'lights/strip/at': '{ distance: 300 mm, elevation: 19 deg }' });
    expect(part.blackShare).toBeGreaterThan(0);
    expect(part.exposureErrorStops).toBeCloseTo(full.exposureErrorStops, 9);
  });
});
