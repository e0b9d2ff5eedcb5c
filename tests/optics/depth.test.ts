import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bestEffectiveFNumber,
  judgedBlur,
  leastBlurUm,
} from '../../shared/optics/best-aperture.ts';
import { depthByFNumber } from '../../shared/optics/depth.ts';
import { airyUm } from '../../shared/optics/diffraction.ts';
import { focusBehindNearestMm } from '../../shared/optics/focus-place.ts';
import { coarserPixelUm, usualCircleOfConfusionMm } from '../../shared/optics/recorded-pixel.ts';
import { depthByPupil } from '../support/depth-by-pupil.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rig = fc.record({
  blurMm: number(0.002, 0.1),
  magnification: number(0.01, 5),
  effectiveFNumber: number(1, 128),
  pupilDistanceMm: number(30, 3000),
});

/**
 * Blur on the sensor, mm, of a point so far off the plane in focus (positive: farther away):
 * m·D·|offset|/|u + offset| by similar triangles at the pupil, with D = m·u/N_eff.
 */
function blurAtMm(
  focused: { magnification: number; effectiveFNumber: number; pupilDistanceMm: number },
  offsetMm: number,
): number {
  const { magnification: m, effectiveFNumber, pupilDistanceMm: u } = focused;
  return (m * ((m * u) / effectiveFNumber) * Math.abs(offsetMm)) / Math.abs(u + offsetMm);
}

describe('depth of field', () => {
  it('grows with the f-number', () => {
    fc.assert(
      fc.property(rig, number(1.01, 4), (input, more) => {
        const depth = depthByFNumber(input);
        fc.pre(depth.totalMm < 1e9);
        const narrower = depthByFNumber({
          ...input,
          effectiveFNumber: input.effectiveFNumber * more,
        });
        expect(narrower.frontMm).toBeGreaterThan(depth.frontMm);
        expect(narrower.behindMm).toBeGreaterThan(depth.behindMm);
      }),
    );
  });

  it('shrinks with the magnification', () => {
    fc.assert(
      fc.property(rig, number(1.01, 4), (input, more) => {
        const depth = depthByFNumber(input);
        const larger = depthByFNumber({ ...input, magnification: input.magnification * more });
        expect(larger.frontMm).toBeLessThan(depth.frontMm);
        expect(larger.totalMm).toBeLessThanOrEqual(depth.totalMm);
      }),
    );
  });

  it('ends where the blur is c', () => {
    fc.assert(
      fc.property(rig, (input) => {
        const { frontMm, behindMm } = depthByFNumber(input);
        expect(blurAtMm(input, -frontMm) / input.blurMm).toBeCloseTo(1, 8);
        if (behindMm < 1e6) expect(blurAtMm(input, behindMm) / input.blurMm).toBeCloseTo(1, 6);
      }),
    );
  });

  it('u·c′/(D + c′) in front and u·c′/(D − c′) behind, endless from D = c′', () => {
    // D 10, u 400, m 0.5, c 0.03: c' = 0.06.
    const pupil = { magnification: 0.5, pupilDiameterMm: 10, pupilDistanceMm: 400 };
    const depth = depthByPupil({ ...pupil, blurMm: 0.03 });
    expect(depth.frontMm).toBeCloseTo((400 * 0.06) / 10.06, 10);
    expect(depth.behindMm).toBeCloseTo((400 * 0.06) / 9.94, 10);
    expect(depthByPupil({ ...pupil, blurMm: 5 }).behindMm).toBe(Number.POSITIVE_INFINITY);
    expect(depthByPupil({ ...pupil, blurMm: 5 }).frontMm).toBeCloseTo(200, 10);
    expect(depthByPupil({ ...pupil, blurMm: 4.99 }).behindMm).toBeLessThan(
      Number.POSITIVE_INFINITY,
    );
  });

  it('is endless both ways at infinity', () => {
    const endless = Number.POSITIVE_INFINITY;
    const atInfinity = { magnification: 0, pupilDistanceMm: endless, blurMm: 0.03 };
    const depth = { frontMm: endless, behindMm: endless, totalMm: endless };
    expect(depthByFNumber({ ...atInfinity, effectiveFNumber: 8 })).toEqual(depth);
  });

  it('is even with the pupil at infinity, and the other way round with it beyond the subject', () => {
    const input = { blurMm: 0.03, magnification: 1, effectiveFNumber: 16 };
    const even = depthByFNumber({ ...input, pupilDistanceMm: Number.POSITIVE_INFINITY });
    expect(even.frontMm).toBe(even.behindMm);
    const usual = depthByFNumber({ ...input, pupilDistanceMm: 200 });
    const beyond = depthByFNumber({ ...input, pupilDistanceMm: -200 });
    expect(beyond.frontMm).toBeCloseTo(usual.behindMm, 12);
    expect(beyond.behindMm).toBeCloseTo(usual.frontMm, 12);
  });
});

describe('where to focus', () => {
  it('blurs both ends alike, nearer to the near one', () => {
    fc.assert(
      fc.property(number(600, 3000), number(0.1, 500), (pupilDistanceMm, depthMm) => {
        const before = focusBehindNearestMm(pupilDistanceMm, depthMm);
        const focused = { magnification: 1, effectiveFNumber: 16, pupilDistanceMm };
        expect(blurAtMm(focused, -before) / blurAtMm(focused, depthMm - before)).toBeCloseTo(1, 6);
        expect(before).toBeLessThanOrEqual(depthMm / 2);
      }),
    );
  });

  it('in the middle, for a pupil at infinity', () => {
    expect(focusBehindNearestMm(Number.POSITIVE_INFINITY, 3)).toBe(1.5);
  });
});

describe('the blur that depth is judged by', () => {
  it('is the circle of confusion until the Airy disk outgrows it', () => {
    expect(judgedBlur(0.03, 16)).toEqual({ blurMm: 0.03, limitedBy: 'circle-of-confusion' });
    const { blurMm, limitedBy } = judgedBlur(0.03, 32);
    expect(limitedBy).toBe('diffraction');
    expect(blurMm).toBeCloseTo(0.0429, 4);
  });

  it('at the best f-number the depth of the Airy disk is the depth wanted', () => {
    fc.assert(
      fc.property(number(0.05, 20), number(0.2, 4), (depthMm, magnification) => {
        const effectiveFNumber = bestEffectiveFNumber(depthMm, magnification);
        const blurMm = airyUm(effectiveFNumber) / 1000;
        const far = { magnification, effectiveFNumber, pupilDistanceMm: 1e9 };
        expect(depthByFNumber({ ...far, blurMm }).totalMm / depthMm).toBeCloseTo(1, 6);
        expect(leastBlurUm(depthMm, magnification)).toBeCloseTo(
          1000 * Math.hypot(blurMm, blurMm),
          9,
        );
      }),
    );
  });
});

describe('the pixel that matters', () => {
  const area = { width: 36, height: 20.25 };
  const hd = { width: 1920, height: 1080 };
  const uhd = { width: 3840, height: 2160 };

  it('is the coarser of recorded and delivered', () => {
    expect(coarserPixelUm(area, uhd, hd)).toBeCloseTo(18.75, 12);
    expect(coarserPixelUm(area, hd, uhd)).toBeCloseTo(18.75, 12);
    expect(coarserPixelUm(area, uhd, uhd)).toBeCloseTo(9.375, 12);
    expect(coarserPixelUm(area, uhd, undefined)).toBeCloseTo(9.375, 12);
    expect(coarserPixelUm(area, undefined, undefined)).toBeUndefined();
  });

  it('after the crop to the delivered frame', () => {
    // A square picture out of a wide one uses its height: 20.25 mm over 1080.
    expect(coarserPixelUm(area, uhd, { width: 1080, height: 1080 })).toBeCloseTo(18.75, 12);
    expect(coarserPixelUm(area, uhd, { width: 540, height: 540 })).toBeCloseTo(37.5, 12);
  });

  it('keeps the usual circle of confusion from falling under a delivered pixel', () => {
    const diagonal = Math.hypot(36, 20.25) / 1500;
    expect(usualCircleOfConfusionMm(area, undefined)).toBeCloseTo(diagonal, 12);
    expect(usualCircleOfConfusionMm(area, hd)).toBeCloseTo(diagonal, 12);
    expect(usualCircleOfConfusionMm(area, { width: 1280, height: 720 })).toBeCloseTo(36 / 1280, 12);
  });
});
