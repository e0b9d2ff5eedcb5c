import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverage } from '../../shared/mirror/coverage.ts';
import { bowCurvaturePerMm, filmSurface } from '../../shared/mirror/film-surface.ts';
import {
  coversFrame,
  type FrameView,
  neededLight,
  spareAround,
} from '../../shared/mirror/patch.ts';
import type { Source } from '../../shared/mirror/source.ts';
import { blackByRays } from '../published/support/black-by-rays.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const views: fc.Arbitrary<FrameView> = fc.record({
  widthMm: between(4, 40),
  heightMm: between(4, 24),
  pupilDistanceMm: between(80, 1200),
  pupilMm: between(0, 40),
});

const sources: fc.Arbitrary<Source> = fc.record({
  face: fc.oneof(
    fc.record({
      shape: fc.constant('rectangle' as const),
      widthMm: between(10, 900),
      heightMm: between(10, 900),
    }),
    fc.record({ shape: fc.constant('round' as const), diameterMm: between(10, 900) }),
  ),
  distanceMm: between(150, 1500),
  upRad: between(rad(-20), rad(80)),
  acrossRad: between(rad(-30), rad(30)),
});

const VIEW: FrameView = { widthMm: 24, heightMm: 13.5, pupilDistanceMm: 420, pupilMm: 12.5 };
const WALL: Source = {
  face: { shape: 'rectangle', widthMm: 600, heightMm: 400 },
  distanceMm: 500,
  upRad: rad(26),
  acrossRad: 0,
};

/** A rectangle where the mirrored frame asks for one, so many times as large as that. */
function ampleLight(view: FrameView, tilt: number, { distanceMm }: Source, times: number): Source {
  const needed = neededLight(view, filmSurface(tilt, 'level'), distanceMm);
  if (needed === null) throw new Error('no light fills it');
  const { widthMm, heightMm, upRad, acrossRad } = needed;
  const face = {
    shape: 'rectangle' as const,
    widthMm: widthMm * times,
    heightMm: heightMm * times,
  };
  return { face, distanceMm, upRad, acrossRad };
}

describe('the patch that the frame needs', () => {
  it('lies at twice the tilt, and is extent·(z + s)/z + D·s/z across', () => {
    fc.assert(
      fc.property(views, between(0, rad(30)), between(100, 1500), (view, tilt, s) => {
        const needed = neededLight(view, filmSurface(tilt, 'level'), s);
        expect(needed?.upRad).toBeCloseTo(2 * tilt, 9);
        expect(needed?.acrossRad).toBeCloseTo(0, 9);
      }),
    );
    const { pupilDistanceMm: z, pupilMm: D } = VIEW;
    const needed = neededLight(VIEW, filmSurface(rad(3), 'level'), 500);
    const size = (extent: number): number => (extent * (z + 500)) / z + (D * 500) / z;
    // Three degrees of tilt change either by 1 % at most.
    expect(Math.abs((needed?.widthMm ?? 0) / size(24) - 1)).toBeLessThan(0.01);
    expect(Math.abs((needed?.heightMm ?? 0) / size(13.5) - 1)).toBeLessThan(0.01);
  });

  it('is filled by the light that it asks for, and by none that is smaller', () => {
    fc.assert(
      fc.property(views, between(0, rad(30)), between(150, 1500), (view, tilt, s) => {
        const surface = filmSurface(tilt, 'level');
        const needed = neededLight(view, surface, s);
        if (needed === null) throw new Error('no light fills it');
        const light = (k: number): Source => ({
          face: {
            shape: 'rectangle',
            widthMm: needed.widthMm * k,
            heightMm: needed.heightMm * k,
          },
          distanceMm: s,
          upRad: needed.upRad,
          acrossRad: needed.acrossRad,
        });
        expect(coversFrame(view, surface, light(1.0001))).toBe(true);
        expect(coverage(view, surface, light(1.0001)).lostShare).toBe(0);
        expect(coversFrame(view, surface, light(0.98))).toBe(false);
      }),
    );
  });

  it('is larger on a film that bulges', () => {
    const size = (bow: number): number =>
      neededLight(VIEW, filmSurface(rad(4), 'level', bowCurvaturePerMm(bow, 100)), 500)?.widthMm ??
      Number.NaN;
    expect(size(0.5)).toBeGreaterThan(size(0.1));
    expect(size(0.1)).toBeGreaterThan(size(0));
  });

  it('is told against the light’s own edges', () => {
    const spare = spareAround(VIEW, filmSurface(rad(4), 'level'), WALL);
    expect(spare?.leftMm).toBeCloseTo(spare?.rightMm ?? 0, 6);
    expect(spare?.bottomMm).toBeLessThan(spare?.topMm ?? 0);
    expect(spare?.bottomMm).toBeGreaterThan(0);
  });

  it('leaves the rest of a light on each side of it: extent·(z + s)/z + D·s/z is taken', () => {
    const { pupilDistanceMm: z, pupilMm: D } = VIEW;
    const size = (extent: number): number => (extent * (z + 500)) / z + (D * 500) / z;
    const face = { shape: 'rectangle', widthMm: 400, heightMm: 300 } as const;
    const light: Source = { face, distanceMm: 500, upRad: 0, acrossRad: 0 };
    const spare = spareAround(VIEW, filmSurface(0, 'level'), light)!;
    for (const side of [spare.leftMm, spare.rightMm])
      expect(side).toBeCloseTo(200 - size(VIEW.widthMm) / 2, 6);
    for (const side of [spare.bottomMm, spare.topMm])
      expect(side).toBeCloseTo(150 - size(VIEW.heightMm) / 2, 6);
  });

  it('has no light where rays are thrown past it', () => {
    const edgeOn: Source = { ...WALL, upRad: rad(-89) };
    expect(spareAround(VIEW, filmSurface(rad(20), 'level'), edgeOn)).toBeNull();
    expect(coverage(VIEW, filmSurface(rad(20), 'level'), edgeOn)).toEqual({
      lostShare: 1,
      side: 'all',
    });
  });
});

describe('coverage', () => {
  it('leaves nothing black where the light covers the patch, and by rays neither', () => {
    const found = { covered: 0, black: 0 };
    fc.assert(
      fc.property(
        views,
        sources,
        between(0, rad(40)),
        fc.option(between(1.02, 2), { freq: 1 }),
        (view, anywhere, tilt, ample) => {
          const surface = filmSurface(tilt, 'level');
          // Half of the lights stand where they are needed, and are larger than it takes.
          const source = ample === null ? anywhere : ampleLight(view, tilt, anywhere, ample);
          const { lostShare, side } = coverage(view, surface, source);
          expect(lostShare).toBeGreaterThanOrEqual(0);
          expect(lostShare).toBeLessThanOrEqual(1);
          expect(side === 'none').toBe(lostShare === 0);
          const covers = coversFrame(view, surface, source);
          if (source !== anywhere) expect(covers).toBe(true);
          const rays = blackByRays(view, tilt, 'level', source, { rows: 9, overPupil: 12 });
          if (covers) {
            // A round face is drawn with sides, so it may miss by a hair what its circle covers.
            expect(lostShare).toBeLessThan(1e-4);
            expect(rays).toBe(0);
            found.covered++;
          } else if (lostShare > 0.2) {
            expect(rays).toBeGreaterThan(0);
            found.black++;
          }
        },
      ),
      { numRuns: 300 },
    );
    expect(found.covered).toBeGreaterThan(60);
    expect(found.black).toBeGreaterThan(60);
  });

  it('leaves nothing black on a bowed film either, and something once the light is too small', () => {
    fc.assert(
      fc.property(views, between(-0.8, 0.8), between(0, rad(20)), (view, bow, tilt) => {
        const surface = filmSurface(tilt, 'level', bowCurvaturePerMm(bow, 120));
        const needed = neededLight(view, surface, 400);
        if (needed === null) throw new Error('no light fills it');
        const light = (k: number): Source => ({
          face: {
            shape: 'rectangle',
            widthMm: needed.widthMm * k,
            heightMm: needed.heightMm * k,
          },
          distanceMm: 400,
          upRad: needed.upRad,
          acrossRad: needed.acrossRad,
        });
        expect(coversFrame(view, surface, light(1.001))).toBe(true);
        expect(coverage(view, surface, light(1.001)).lostShare).toBeLessThan(1e-4);
        expect(coverage(view, surface, light(0.4)).lostShare).toBeGreaterThan(0.01);
      }),
      { numRuns: 40, endOnFailure: true },
    );
  });

  it('never falls when the light grows', () => {
    fc.assert(
      fc.property(views, sources, between(0, rad(40)), between(1, 3), (view, source, tilt, k) => {
        const face =
          source.face.shape === 'round'
            ? { ...source.face, diameterMm: source.face.diameterMm * k }
            : { ...source.face, widthMm: source.face.widthMm * k };
        const surface = filmSurface(tilt, 'level');
        const before = coverage(view, surface, source).lostShare;
        expect(coverage(view, surface, { ...source, face }).lostShare).toBeLessThanOrEqual(
          before + 1e-9,
        );
      }),
    );
  });

  it('is the same by image and by rays: a film bowed by next to nothing is flat', () => {
    fc.assert(
      fc.property(views, sources, between(0, rad(20)), (view, source, tilt) => {
        const flat = coverage(view, filmSurface(tilt, 'level'), source).lostShare;
        const bowed = coverage(view, filmSurface(tilt, 'level', 1e-12), source).lostShare;
        // A round light smaller than a cell of the grid is drawn coarsely, and leaves all else black.
        expect(Math.abs(flat - bowed)).toBeLessThan(source.face.shape === 'round' ? 0.015 : 0.004);
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });

  it('turns with the tilt’s axis: upright is level on its side', () => {
    const upright = coverage(
      { ...VIEW, widthMm: 13.5, heightMm: 24 },
      filmSurface(rad(4), 'upright'),
      {
        ...WALL,
        face: { shape: 'rectangle', widthMm: 60, heightMm: 600 },
        upRad: 0,
        acrossRad: rad(11),
      },
    );
    const level = coverage(VIEW, filmSurface(rad(4), 'level'), {
      ...WALL,
      face: { shape: 'rectangle', widthMm: 600, heightMm: 60 },
      upRad: rad(11),
    });
    expect(upright.lostShare).toBeCloseTo(level.lostShare, 9);
    expect([upright.side, level.side]).toEqual(['left', 'bottom']);
  });

  it('refuses a light without extent, by name', () => {
    const flat: Source = { ...WALL, face: { shape: 'rectangle', widthMm: 0, heightMm: 4 } };
    expect(() => coverage(VIEW, filmSurface(0), flat)).toThrow(/width of the light/);
    expect(() => coverage(VIEW, filmSurface(0), { ...WALL, distanceMm: -1 })).toThrow(/distance/);
  });
});
