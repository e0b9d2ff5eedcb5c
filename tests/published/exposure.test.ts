import { describe, expect, it } from 'vitest';
import {
  evOfIlluminance,
  evOfLuminance,
  evOfSettings,
  illuminanceOfEv,
  luminanceOfEv,
} from '../../shared/exposure/ev.ts';
import {
  flickerFreeTimesS,
  flickerResidual,
  lampFrequencyHz,
} from '../../shared/exposure/flicker.ts';
import { evAskedFor, exposureErrorStops, isoClosing } from '../../shared/exposure/reading.ts';
import { shutterAngleDeg } from '../../shared/exposure/shutter.ts';
import { MARKED_APERTURES } from '../../shared/optics/apertures.ts';
import { traceChain } from '../../shared/optics/chain.ts';
import { chainOf, unitFocusing } from './support/chains.ts';

describe('exposure compensation for extension', () => {
  // US Army photography course SS0512: a 12 in lens at 18 in of bellows extension, factor (18/12)².
  it('12 in at 18 in: 2.25 times, 8 s become 18 s', () => {
    const inch = 25.4;
    const bellows = chainOf(
      { kind: 'body' },
      { kind: 'tube', lengthMm: 6 * inch },
      unitFocusing(12 * inch, 1),
    );
    const factor = traceChain(bellows, 0).fNumberRatio ** 2;
    expect(factor).toBeCloseTo(2.25, 12);
    expect(8 * factor).toBeCloseTo(18, 10);
  });
});

describe('APEX and EV', () => {
  // APEX (ANSI PH2.12): Av = log2 N², Tv = −log2 t, exact for the exact series.
  it.each([
    [1, 1, 0],
    [Math.SQRT2, 1, 1],
    [8, 1 / 128, 13],
    [16, 1 / 128, 15],
    [5.656854249492381, 1 / 64, 11],
  ])('f/%d at %d s, ISO 100: EV %d', (fNumber, timeS, ev) => {
    expect(evOfSettings({ fNumber, timeS, iso: 100 })).toBeCloseTo(ev, 12);
  });

  // Luminance of an EV at K 12.5: L = 2^(EV − 3) cd/m².
  it.each([-2, 0, 3, 10, 15])('EV %d is 2^(EV − 3) cd/m²', (ev) => {
    expect(luminanceOfEv(ev)).toBeCloseTo(2 ** (ev - 3), 12);
    expect(evOfLuminance(2 ** (ev - 3))).toBeCloseTo(ev, 12);
  });

  // Illuminance of an EV at C 250, tables of EV against lux.
  it.each([
    [-1, 1.25],
    [0, 2.5],
    [1, 5],
    [2, 10],
    [3, 20],
    [4, 40],
  ])('EV %d is %d lx', (ev, lux) => {
    expect(illuminanceOfEv(ev)).toBeCloseTo(lux, 12);
    expect(evOfIlluminance(lux)).toBeCloseTo(ev, 12);
  });

  // Common practice: halving the time and doubling the speed exposes alike.
  it('1/100 s at ISO 1600 exposes as 1/50 s at ISO 800', () => {
    const short = evAskedFor({ fNumber: 16, timeS: 1 / 100, iso: 1600 }, 0.3);
    const long = evAskedFor({ fNumber: 16, timeS: 1 / 50, iso: 800 }, 0.3);
    expect(exposureErrorStops(short, long)).toBeCloseTo(0, 12);
  });

  // Common practice ("sunny 16"): full sun, about EV 15 at ISO 100, f/16 at 1/ISO s.
  it('f/16 at 1/100 s needs about ISO 100 in EV 15', () => {
    const iso = isoClosing(
      exposureErrorStops(15, evAskedFor({ fNumber: 16, timeS: 1 / 100, iso: 100 }, 0)),
    );
    expect(Math.abs(Math.log2(iso / 100))).toBeLessThan(0.4);
  });
});

describe('a converter', () => {
  // Common practice: a 2x converter makes f/16 work as f/32 and f/32 as f/64.
  it.each([
    [16, 32],
    [32, 64],
  ])('2x: f/%d works as f/%d', (marked, works) => {
    const twice = { kind: 'converter', factor: 2, lengthMm: 47 } as const;
    const chain = chainOf({ kind: 'body' }, twice, unitFocusing(180, 0.5));
    expect(marked * traceChain(chain, 0).fNumberRatio).toBeCloseTo(works, 10);
  });
});

/**
 * Marked apertures: the third-stop series as it stands on lenses at large. Exact values are 2^(k/6);
 * ISO 517's own table is not public, so this is a secondary source.
 */
describe('marked apertures', () => {
  const marks = [
    1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11,
    13, 14, 16, 18, 20, 22, 25, 29, 32,
  ];

  it('is the series from f/1 to f/32, each within 5 % of 2^(k/6)', () => {
    expect(MARKED_APERTURES.slice(0, marks.length)).toEqual(marks);
    for (const [thirds, mark] of MARKED_APERTURES.entries()) {
      expect(Math.abs(mark / 2 ** (thirds / 6) - 1)).toBeLessThan(0.05);
    }
  });
});

describe('shutter angles free of flicker', () => {
  const anglesDeg = (mainsHz: number, rate: number) =>
    flickerFreeTimesS(lampFrequencyHz(mainsHz), rate).map((timeS) => shutterAngleDeg(timeS, rate));

  // Common practice: 25 fps under 60 Hz lamps.
  it('25 fps at 60 Hz: 75, 150, 225, 300°', () => {
    expect(anglesDeg(60, 25).map((deg) => Number(deg.toFixed(9)))).toEqual([300, 225, 150, 75]);
  });

  // Common practice: 24 fps under 50 Hz lamps is shot at 172.8°.
  it('24 fps at 50 Hz: 172.8°', () => {
    expect(anglesDeg(50, 24).map((deg) => Number(deg.toFixed(9)))).toContain(172.8);
  });

  // Common practice: at half the mains frequency a 180° shutter (1/50 s at 25 fps, 1/60 s at 30) is safe.
  it.each([
    [50, 1 / 50],
    [60, 1 / 60],
    [50, 1 / 100],
  ])('%d Hz: %d s leaves nothing', (mainsHz, timeS) => {
    expect(flickerResidual(lampFrequencyHz(mainsHz), timeS)).toBeLessThan(1e-12);
  });

  it('1/48 s on 50 Hz leaves what averaging the lamp over the shutter shows', () => {
    // Brute force: the largest and least mean of a fully modulated lamp over 1/48 s, whenever it opens.
    const frequency = 100;
    const timeS = 1 / 48;
    const meanFrom = (start: number) => {
      const steps = 2000;
      let sum = 0;
      for (let i = 0; i < steps; i++) {
        sum += 1 + Math.cos(2 * Math.PI * frequency * (start + ((i + 0.5) / steps) * timeS));
      }
      return sum / steps;
    };
    const means = Array.from({ length: 400 }, (_, i) => meanFrom(i / 400 / frequency));
    const swing = (Math.max(...means) - Math.min(...means)) / 2;
    expect(flickerResidual(frequency, timeS)).toBeCloseTo(swing, 4);
    expect(swing.toFixed(2)).toBe('0.04');
  });
});
