import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  leastTiltRad,
  type MirrorView,
  rimClearedMm,
  STEEPEST_TILT_RAD,
  showsLens,
} from '../../shared/mirror/least-tilt.ts';
import {
  depthForTiltMm,
  fieldForTiltMm,
  greatestTiltByDepthRad,
  workingDistanceForTiltMm,
} from '../../shared/mirror/tilt-window.ts';

const degrees = (rad: number): number => (rad * 180) / Math.PI;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const anyView: fc.Arbitrary<MirrorView> = fc.record({
  workingDistanceMm: between(60, 1500),
  rimMm: between(20, 140),
  pupilMm: between(0, 60),
  pupilBehindRimMm: between(-30, 200),
  fieldAlongMm: between(1, 40),
});

/** Views that some tilt clears: not a wide rim right at the film. */
const views = anyView.filter((view) => leastTiltRad(view) !== null);

const least = (view: MirrorView): number => {
  const tilt = leastTiltRad(view);
  if (tilt === null) throw new Error('no least tilt');
  return tilt;
};

const VIEW: MirrorView = {
  workingDistanceMm: 400,
  rimMm: 77,
  pupilMm: 12.5,
  pupilBehindRimMm: 60,
  fieldAlongMm: 13.5,
};

describe('least tilt', () => {
  it('is where the lens stops showing: more tilt never shows more of it', () => {
    fc.assert(
      fc.property(views, between(0, 1), between(0, 1), (view, a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(rimClearedMm(view, more)).toBeGreaterThanOrEqual(rimClearedMm(view, less) - 1e-9);
        const tilt = least(view);
        expect(showsLens(view, tilt)).toBe(false);
        expect(showsLens(view, tilt - 1e-6)).toBe(true);
      }),
    );
  });

  it('never falls with a larger pupil, rim or frame', () => {
    fc.assert(
      fc.property(views, between(1, 2), (view, k) => {
        const tilt = least(view) - 1e-9;
        for (const larger of ['pupilMm', 'rimMm', 'fieldAlongMm'] as const) {
          const needs = leastTiltRad({ ...view, [larger]: view[larger] * k });
          expect(needs ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(tilt);
        }
      }),
    );
  });

  it('about halves when working distance and all behind it double', () => {
    fc.assert(
      fc.property(views, (view) => {
        const near = { ...view, workingDistanceMm: view.workingDistanceMm + 150 };
        const far = {
          ...near,
          workingDistanceMm: 2 * near.workingDistanceMm,
          pupilBehindRimMm: 2 * near.pupilBehindRimMm,
        };
        // Half, but for the tangent's curve: 30 % off at the steepest that this draws.
        expect(least(far) / least(near)).toBeGreaterThan(0.48);
        expect(least(far) / least(near)).toBeLessThan(0.62);
      }),
    );
  });

  it('is the closed form where angles are small', () => {
    fc.assert(
      fc.property(views, (drawn) => {
        const view = { ...drawn, workingDistanceMm: drawn.workingDistanceMm * 8 + 1000 };
        const W = view.workingDistanceMm;
        const k = W / (W + view.pupilBehindRimMm);
        const sum = (view.fieldAlongMm / 2) * (1 + k) + view.rimMm / 2 + (k * view.pupilMm) / 2;
        expect(least(view) / (sum / (2 * W))).toBeCloseTo(1, 1.5);
      }),
    );
  });

  it('grows for a film that bulges, and takes the middle road back for one that is hollow', () => {
    fc.assert(
      fc.property(views, between(0.01, 0.5), (view, bowMm) => {
        const bowed = { ...view, bowMm, bowOverMm: 80 };
        expect(leastTiltRad(bowed) ?? STEEPEST_TILT_RAD).toBeGreaterThan(least(view));
      }),
    );
    const hollow = (bowMm: number) => least({ ...VIEW, bowMm: -bowMm, bowOverMm: 80 });
    expect(hollow(1)).toBeLessThan(least(VIEW));
    expect(hollow(12)).toBeGreaterThan(hollow(4));
  });

  it('bends smoothly: a bow of next to nothing is next to flat', () => {
    const bowed = least({ ...VIEW, bowMm: 1e-7, bowOverMm: 80 });
    expect(bowed).toBeCloseTo(least(VIEW), 7);
  });

  it('refuses what no lens can be', () => {
    expect(() => leastTiltRad({ ...VIEW, workingDistanceMm: 0 })).toThrow(/working distance/);
    expect(() => leastTiltRad({ ...VIEW, rimMm: Number.NaN })).toThrow(/rim/);
    expect(() => leastTiltRad({ ...VIEW, pupilMm: -1 })).toThrow(/pupil/);
    expect(() => leastTiltRad({ ...VIEW, pupilBehindRimMm: -500 })).toThrow(/pupil/);
    expect(() => leastTiltRad({ ...VIEW, bowMm: 50, bowOverMm: 60 })).toThrow(/bow/);
  });
});

describe('the tilt window', () => {
  const film = { fieldAlongMm: 13.5, subjectAlongMm: 100 };

  it('is limited by depth: the inverse of the depth that a tilt needs', () => {
    fc.assert(
      fc.property(
        between(1, 40),
        between(1, 40),
        between(0, 1),
        between(0.01, 1.5),
        (fieldAlongMm, subjectAlongMm, bowMm, tilt) => {
          const subject = { fieldAlongMm, subjectAlongMm, bowMm };
          const depth = depthForTiltMm(subject, tilt);
          expect(greatestTiltByDepthRad(subject, depth)).toBeCloseTo(tilt, 6);
        },
      ),
    );
  });

  it('knows a depth that nothing can outrun, and one that the bow alone takes', () => {
    expect(greatestTiltByDepthRad(film, 100)).toBe(Math.PI / 2);
    expect(greatestTiltByDepthRad({ ...film, bowMm: 1 }, 0.8)).toBe(0);
  });

  // W 400, h 13.5, R 77, pinhole at the rim: 3.71° takes 0.88 mm of depth.
  it('has its price in depth', () => {
    const pinhole = { ...VIEW, pupilMm: 0, pupilBehindRimMm: 0 };
    expect(depthForTiltMm(film, least(pinhole))).toBeCloseTo(0.88, 2);
  });

  it('opens from farther off: working distance and least tilt are each other’s inverse', () => {
    fc.assert(
      fc.property(views, (view) => {
        const tilt = least(view);
        const W = workingDistanceForTiltMm(view, tilt);
        expect(W).toBeCloseTo(view.workingDistanceMm, 3);
      }),
    );
  });

  it('never opens where the bow turns the film’s edge to the lens', () => {
    expect(workingDistanceForTiltMm({ ...VIEW, bowMm: 3, bowOverMm: 60 }, 0.03)).toBeNull();
  });

  it('opens for a narrower frame', () => {
    const tilt = least(VIEW);
    expect(fieldForTiltMm(VIEW, tilt)).toBeCloseTo(VIEW.fieldAlongMm, 6);
    expect(degrees(least({ ...VIEW, fieldAlongMm: fieldForTiltMm(VIEW, 0.06) }))).toBeCloseTo(
      degrees(0.06),
      6,
    );
    expect(fieldForTiltMm(VIEW, 0.01)).toBe(0);
  });
});
