import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filmColour, prepareSwatches } from '../../shared/film/colour.ts';
import { firstMaximum } from '../../shared/film/first-maximum.ts';
import { addsRearReflection, HOLDERS, longerHolders, usualLife } from '../../shared/film/life.ts';
import { lightSpectrum } from '../../shared/film/light.ts';
import { bandsOver, blackUpToNm, pathDifferenceNm } from '../../shared/film/orders.ts';
import {
  averageReflectance,
  filmReflectance,
  peakReflectance,
} from '../../shared/film/reflectance.ts';
import { colourSequence } from '../../shared/film/sequence.ts';
import { filmTristimulus, prepareFilm, whiteOf } from '../../shared/film/tristimulus.ts';
import { waterIndex } from '../../shared/film/water.ts';

const degrees = (value: number): number => (value * Math.PI) / 180;
const thickness = fc.double({ min: 0, max: 10_000, noNaN: true });
const visible = fc.double({ min: 380, max: 780, noNaN: true });
const index = fc.double({ min: 1.01, max: 2.5, noNaN: true });
const incidence = fc.double({ min: 0, max: degrees(85), noNaN: true });

describe('reflectance', () => {
  it('is between 0 and the peak, which is between 0 and 1', () => {
    fc.assert(
      fc.property(thickness, visible, index, incidence, (d, nm, n, theta) => {
        const r = filmReflectance(d, nm, n, theta);
        const peak = peakReflectance(n, theta);
        expect(r).toBeGreaterThanOrEqual(0);
        expect(r).toBeLessThanOrEqual(peak + 1e-15);
        expect(peak).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('averages over thickness to its closed form', () => {
    fc.assert(
      fc.property(index, fc.double({ min: 0, max: degrees(60), noNaN: true }), (n, theta) => {
        const cos = Math.sqrt(1 - (Math.sin(theta) / n) ** 2);
        const period = 550 / (2 * n * cos);
        const steps = 200;
        let sum = 0;
        for (let i = 0; i < steps; i += 1)
          sum += filmReflectance(((i + 0.5) * period) / steps, 550, n, theta);
        expect(averageReflectance(n, theta)).toBeCloseTo(sum / steps, 6);
      }),
    );
  });

  it('is about half its peak on average, for water', () => {
    expect(averageReflectance(1.33) / peakReflectance(1.33)).toBeCloseTo(0.51, 2);
  });

  it('refuses what is outside its range, by name', () => {
    expect(() => filmReflectance(-1, 550, 1.33)).toThrow(/thickness/);
    expect(() => filmReflectance(100, 550, 0.5)).toThrow(/index/);
    expect(() => filmReflectance(100, 550, 1.33, 2)).toThrow(/angle/);
    expect(() => filmReflectance(Number.NaN, 550, 1.33)).toThrow(/thickness/);
    expect(() => waterIndex(2000)).toThrow(/wavelength/);
    expect(() => lightSpectrum(500)).toThrow(/temperature/);
  });
});

describe('colours', () => {
  const film = prepareFilm({ lightK: 5600, incidenceRad: degrees(4) });

  it('never exceed what a perfect white returns', () => {
    fc.assert(
      fc.property(thickness, (d) => {
        const xyz = filmTristimulus(film, d);
        for (const part of ['x', 'y', 'z'] as const) {
          expect(xyz[part]).toBeGreaterThanOrEqual(0);
          expect(xyz[part]).toBeLessThanOrEqual(0.08 * film.white[part] * (1 + 1e-12));
        }
      }),
    );
  });

  it('run together to a grey white in a thick film, at the average reflectance', () => {
    const parts = Array.from({ length: 200 }, (_, i) => filmTristimulus(film, 9000 + 5 * i));
    const mean = parts.reduce((sum, { y }) => sum + y, 0) / parts.length;
    expect(mean / 100).toBeCloseTo(averageReflectance(1.3345), 3);
    for (const { x, y, z } of parts) {
      expect(x / y).toBeCloseTo(film.white.x / 100, 1);
      expect(z / y).toBeCloseTo(film.white.z / 100, 1);
    }
  });

  it('are bluer when seen aslant: the path difference shrinks', () => {
    const slant = prepareFilm({ lightK: 5600, incidenceRad: degrees(50) });
    expect(firstMaximum(slant).thicknessNm).toBeGreaterThan(firstMaximum(film).thicknessNm * 1.2);
    expect(pathDifferenceNm(slant, 300)).toBeLessThan(pathDifferenceNm(film, 300));
  });

  it('are brightest at the first maximum', () => {
    const first = firstMaximum(film);
    for (let d = 0; d <= 1000; d += 5)
      expect(filmTristimulus(film, d).y).toBeLessThanOrEqual(first.y + 1e-9);
  });

  it('show the first maximum near white when balanced, warm when the light is warmer', () => {
    const near = (lightK: number, balanceK: number) => {
      const swatches = prepareSwatches({ lightK, incidenceRad: 0 }, balanceK);
      return filmColour(swatches, firstMaximum(swatches.film).thicknessNm).screen;
    };
    const neutral = near(5600, 5600);
    for (const part of [neutral.red, neutral.green, neutral.blue])
      expect(part).toBeGreaterThan(0.85);
    const warm = near(3200, 5600);
    expect(warm.red - warm.blue).toBeGreaterThan(0.15);
    const cool = near(5600, 3200);
    expect(cool.blue - cool.red).toBeGreaterThan(0.05);
  });

  it('keep the light itself neutral under its own white balance', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2000, max: 20_000 }), (kelvin) => {
        const white = whiteOf(kelvin);
        expect(white.y).toBeCloseTo(100, 9);
        expect(white.x).toBeGreaterThan(0);
      }),
      { numRuns: 30 },
    );
  });
});

describe('orders', () => {
  const film = prepareFilm({ lightK: 5600, incidenceRad: 0 });
  const bandAt = (nm: number) => bandsOver(film, nm, nm + 1e-6)[0]?.band;

  it('begin black, up to about 14 nm', () => {
    expect(blackUpToNm(film)).toBeGreaterThan(13.5);
    expect(blackUpToNm(film)).toBeLessThan(14.7);
    expect(bandAt(10)).toEqual({ kind: 'black' });
  });

  it('go on grey to the first maximum, then count by 550 nm of path', () => {
    expect(bandAt(60)).toEqual({ kind: 'grey' });
    expect(bandAt(150)).toEqual({ kind: 'order', order: 1 });
    expect(bandAt(300)).toEqual({ kind: 'order', order: 2 });
    expect(bandAt(500)).toEqual({ kind: 'order', order: 3 });
  });

  // Interference colour chart: the red of the first order gives way to the violet, blue and green
  // of the second past 550 nm of path ("sensitive tint"; from memory).
  it('turn from red to blue where the first order ends', () => {
    const swatches = prepareSwatches({ lightK: 5600, incidenceRad: 0 });
    const at = (pathNm: number) => filmColour(swatches, pathNm / pathDifferenceNm(film, 1)).screen;
    const before = at(480);
    const after = at(620);
    expect(before.red).toBeGreaterThan(before.blue);
    expect(after.blue).toBeGreaterThan(after.red);
  });

  it('cover a range without gap or overlap, and agree with the band of each thickness', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 0.1, max: 3000, noNaN: true }),
        (from, span) => {
          const bands = bandsOver(film, from, from + span);
          expect(bands[0]?.fromNm).toBe(from);
          expect(bands.at(-1)?.toNm).toBe(from + span);
          bands.forEach((stretch, i) => {
            if (i > 0) expect(stretch.fromNm).toBe(bands[i - 1]?.toNm);
            expect(bandAt((stretch.fromNm + stretch.toNm) / 2)).toEqual(stretch.band);
          });
        },
      ),
    );
  });

  it('come as swatches, thinnest first, both ends included', () => {
    const colours = colourSequence(prepareSwatches({ lightK: 5600, incidenceRad: 0 }), 80, 700, 32);
    expect(colours).toHaveLength(32);
    expect(colours[0]?.thicknessNm).toBe(80);
    expect(colours[31]?.thicknessNm).toBe(700);
    expect(() =>
      colourSequence(prepareSwatches({ lightK: 5600, incidenceRad: 0 }), 700, 80, 32),
    ).toThrow(/least thickness/);
  });
});

describe('life', () => {
  // Common practice: see the docstring of usualLife.
  it('of the usual stances and holders', () => {
    expect(usualLife('upright', 'smooth-container')).toMatchObject({ shortestS: 25, longestS: 30 });
    expect(usualLife('upright', 'wicking-frame')).toMatchObject({ shortestS: 60, longestS: 120 });
    expect(usualLife('level', 'closed-vessel')).toEqual({ kind: 'hours' });
    // No figure of the trade is known for any other pair.
    for (const holder of ['smooth-container', 'wicking-frame'] as const)
      expect(usualLife('level', holder), holder).toBeNull();
    expect(usualLife('upright', 'closed-vessel')).toBeNull();
  });

  it('is longer on a wicking frame, which adds no reflection of its own', () => {
    expect(longerHolders('upright', 'smooth-container')).toEqual(['wicking-frame']);
    expect(longerHolders('upright', 'wicking-frame')).toEqual([]);
    // Nothing is longer than what nobody has a figure for.
    expect(longerHolders('level', 'smooth-container')).toEqual([]);
    expect(HOLDERS.filter((each) => !addsRearReflection(each))).toEqual(['wicking-frame']);
  });
});
