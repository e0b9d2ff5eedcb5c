import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  evOfIlluminance,
  evOfLuminance,
  evOfSettings,
  evTogether,
} from '../../shared/exposure/ev.ts';
import {
  bandRollHz,
  bandsInFrame,
  flickerFreeMarksS,
  flickerFreeTimeS,
  flickerFreeTimesS,
  flickerResidual,
} from '../../shared/exposure/flicker.ts';
import {
  bareLensFNumber,
  evAskedFor,
  exposureErrorStops,
  isoClosing,
} from '../../shared/exposure/reading.ts';
import { nearestIso, remediesFor } from '../../shared/exposure/remedies.ts';
import { isLongerThanFrame, shutterAngleDeg, shutterTimeS } from '../../shared/exposure/shutter.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const settings = fc.record({
  fNumber: number(1, 128),
  timeS: number(1e-4, 1),
  iso: number(25, 25600),
});

describe('what a scene gives less what a shot asks', () => {
  const reading = { fNumber: 8, timeS: 1 / 50, iso: 400 };

  it('a shot at its reading is right', () => {
    expect(exposureErrorStops(evAskedFor(reading, 0.3), evAskedFor(reading, 0.3))).toBe(0);
  });

  it('too small an aperture is too little light, by its stops', () => {
    const shot = { ...reading, fNumber: 32 };
    expect(exposureErrorStops(evAskedFor(reading, 0), evAskedFor(shot, 0))).toBeCloseTo(-4, 12);
  });

  it('what a meter read has no loss, what the lens takes is missing then', () => {
    const error = exposureErrorStops(evAskedFor(reading, 0), evAskedFor(reading, 0.4));
    expect(error).toBeCloseTo(-0.4, 12);
  });

  it('the ISO needed exposes right', () => {
    fc.assert(
      fc.property(settings, number(-4, 18), number(0, 5), (shot, sceneEv, lossStops) => {
        const iso = isoClosing(
          exposureErrorStops(sceneEv, evAskedFor({ ...shot, iso: 100 }, lossStops)),
        );
        const asked = evAskedFor({ ...shot, iso }, lossStops);
        expect(exposureErrorStops(sceneEv, asked)).toBeCloseTo(0, 9);
      }),
    );
  });

  it('every remedy alone closes the error', () => {
    fc.assert(
      fc.property(settings, number(-8, 8), (shot, error) => {
        const sceneEv = evOfSettings(shot) + error;
        const { lightStops, lightFactor, timeS, iso, fNumber } = remediesFor(error, shot);
        expect(evOfSettings({ ...shot, timeS })).toBeCloseTo(sceneEv, 9);
        expect(evOfSettings({ ...shot, iso })).toBeCloseTo(sceneEv, 9);
        expect(evOfSettings({ ...shot, fNumber })).toBeCloseTo(sceneEv, 9);
        expect(sceneEv + lightStops).toBeCloseTo(evOfSettings(shot), 9);
        expect(Math.log2(lightFactor)).toBeCloseTo(lightStops, 9);
      }),
    );
  });

  it('a reading through the bare lens works as marked, unless it was taken close', () => {
    expect(bareLensFNumber(8)).toBe(8);
    expect(bareLensFNumber(8, 0.5, 0.8)).toBeCloseTo(13, 12);
  });
});

describe('lights together', () => {
  it('two alike are one stop more, none are none', () => {
    expect(evTogether([7, 7])).toBeCloseTo(8, 12);
    expect(evTogether([7])).toBe(7);
    expect(evTogether([])).toBe(Number.NEGATIVE_INFINITY);
  });

  it('add in lux', () => {
    const together = evTogether([evOfIlluminance(300), evOfIlluminance(600)]);
    expect(together).toBeCloseTo(evOfIlluminance(900), 12);
    expect(evOfLuminance(0)).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('marks', () => {
  it('the nearest in stops', () => {
    expect(nearestIso(1390)).toBe(1250);
    expect(nearestIso(1500)).toBe(1600);
  });
});

describe('shutter', () => {
  it('angle and time are each other’s inverse', () => {
    expect(shutterTimeS(180, 25)).toBeCloseTo(0.02, 15);
    expect(shutterAngleDeg(1 / 50, 25)).toBeCloseTo(180, 12);
  });

  it('a whole frame is no longer than the frame', () => {
    const rate = 30000 / 1001;
    expect(isLongerThanFrame(1001 / 30000, rate)).toBe(false);
    expect(isLongerThanFrame(1 / 50, 50)).toBe(false);
    expect(isLongerThanFrame(1 / 48, 50)).toBe(true);
  });
});

describe('flicker', () => {
  it('nothing is left of whole cycles, whatever the depth', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), number(40, 40000), (cycles, frequency) => {
        expect(flickerResidual(frequency, cycles / frequency)).toBeLessThan(1e-12);
      }),
    );
  });

  it('all is left of a very short time, and it scales with the depth of modulation', () => {
    expect(flickerResidual(100, 1e-6)).toBeCloseTo(1, 6);
    expect(flickerResidual(100, 1 / 48, 0.5)).toBeCloseTo(flickerResidual(100, 1 / 48) / 2, 12);
    expect(flickerResidual(0, 1 / 50, 0.3)).toBe(0.3);
  });

  it('bands stand where the rate divides the light, else they roll', () => {
    expect(bandRollHz(100, 25)).toBe(0);
    expect(bandRollHz(100, 50)).toBe(0);
    expect(bandRollHz(100, 24)).toBeCloseTo(4, 9);
    expect(bandRollHz(120, 25)).toBeCloseTo(5, 9);
    expect(bandRollHz(120, 30000 / 1001)).toBeCloseTo(0.12, 2);
    expect(bandsInFrame(100, 0.018)).toBeCloseTo(1.8, 12);
  });

  it('knows the marks that are whole cycles', () => {
    // By hand: 20 kHz over 5000, 4000, 2500 … are 4, 5, 8 … cycles; over 8000, 6400 and 3200 no whole number.
    const marks = [200, 250, 320, 400, 500, 1000, 2500, 3200, 4000, 5000, 6400, 8000];
    const free = flickerFreeMarksS(20_000, 250, marks).map((seconds) => Math.round(1 / seconds));
    expect(free).toEqual([250, 400, 500, 1000, 2500, 4000, 5000]);
    expect(flickerFreeMarksS(100, 25, marks)).toEqual([]);
  });

  it('offers the safe time nearest to the one wanted, within the frame', () => {
    expect(flickerFreeTimeS(100, 50, 1 / 48)).toBeCloseTo(1 / 50, 15);
    expect(flickerFreeTimeS(100, 25, 1 / 60)).toBeCloseTo(2 / 100, 15);
    expect(flickerFreeTimeS(100, 25, 1)).toBeCloseTo(4 / 100, 15);
    expect(flickerFreeTimeS(100, 25, 1e-5)).toBeCloseTo(1 / 100, 15);
    expect(flickerFreeTimeS(100, 120, 1 / 200)).toBeUndefined();
    expect(flickerFreeTimesS(100, 120)).toEqual([]);
    expect(flickerFreeTimesS(40_000, 25)).toHaveLength(12);
  });
});
