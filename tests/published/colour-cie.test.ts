/** Matching functions, daylight and Planckian light against the CIE's published figures. */
import { describe, expect, it } from 'vitest';
import { colourMatching } from '../../shared/film/colour-matching.ts';
import { D65_K, daylight, daylightChromaticity } from '../../shared/film/daylight.ts';
import { planckian } from '../../shared/film/light.ts';
import { whiteOf } from '../../shared/film/tristimulus.ts';

const xyOf = (lightK: number): readonly [number, number] => {
  const { x, y, z } = whiteOf(lightK);
  return [x / (x + y + z), y / (x + y + z)];
};

describe('CIE 1931 2° observer', () => {
  // CIE data, DOI 10.25039/CIE.DS.xvudnb9b; the fit is good to 2 % of the peak.
  it('at 555 nm', () => {
    const { x, y, z } = colourMatching(555);
    expect(Math.abs(x - 0.5120501)).toBeLessThan(0.02);
    expect(Math.abs(y - 1)).toBeLessThan(0.02);
    expect(Math.abs(z - 0.005749999)).toBeLessThan(0.002);
  });

  // Of the same table, from memory: where each function is large, and where it has died away.
  it.each([
    { nm: 450, x: 0.3362, y: 0.038, z: 1.77211 },
    { nm: 500, x: 0.0049, y: 0.323, z: 0.272 },
    { nm: 600, x: 1.0622, y: 0.631, z: 0.0008 },
    { nm: 650, x: 0.2835, y: 0.107, z: 0 },
  ])('at $nm nm, within 2 % of each peak', ({ nm, ...wanted }) => {
    const found = colourMatching(nm);
    expect(Math.abs(found.x - wanted.x)).toBeLessThan(0.02 * 1.06);
    expect(Math.abs(found.y - wanted.y)).toBeLessThan(0.02);
    expect(Math.abs(found.z - wanted.z)).toBeLessThan(0.02 * 1.78);
    if (wanted.z < 0.001) expect(found.z).toBeLessThan(0.002);
  });

  it('holds three equal areas, as equal energy is white', () => {
    let sums = [0, 0, 0];
    for (let nm = 360; nm <= 830; nm += 1) {
      const { x, y, z } = colourMatching(nm);
      sums = [(sums[0] ?? 0) + x, (sums[1] ?? 0) + y, (sums[2] ?? 0) + z];
    }
    // 106.857 nm each (CIE 15:2004, table T.4, sums at 1 nm; from memory).
    for (const sum of sums) expect(Math.abs(sum / 106.857 - 1)).toBeLessThan(0.005);
  });

  it('sees D65 at XYZ 95.047, 100, 108.883 (ASTM E308), within 0.1 %', () => {
    const { x, y, z } = whiteOf(D65_K);
    expect(Math.abs(x / 95.047 - 1)).toBeLessThan(0.001);
    expect(y).toBeCloseTo(100, 9);
    expect(Math.abs(z / 108.883 - 1)).toBeLessThan(0.001);
  });
});

describe('daylight', () => {
  // CIE 15:2004, table T.3: chromaticities of the D illuminants (from memory).
  const ILLUMINANTS = [
    { name: 'D50', kelvin: 5003, x: 0.3457, y: 0.3585 },
    { name: 'D55', kelvin: 5503, x: 0.3324, y: 0.3474 },
    { name: 'D65', kelvin: 6504, x: 0.3127, y: 0.329 },
    { name: 'D75', kelvin: 7504, x: 0.299, y: 0.3149 },
  ];

  it.each(ILLUMINANTS)('$name by the locus', ({ kelvin, x, y }) => {
    const locus = daylightChromaticity(kelvin);
    expect(Math.abs(locus.x - x)).toBeLessThan(0.0002);
    expect(Math.abs(locus.y - y)).toBeLessThan(0.0002);
  });

  it.each(ILLUMINANTS)('$name by its spectrum', ({ kelvin, x, y }) => {
    const [seenX, seenY] = xyOf(kelvin);
    expect(Math.abs(seenX - x)).toBeLessThan(0.0006);
    expect(Math.abs(seenY - y)).toBeLessThan(0.0006);
  });

  // ISO 11664-2, D65 (the same figures as CIE 15:2004, table T.1; from memory), every 50 nm.
  it.each([
    { nm: 400, power: 82.7549 },
    { nm: 450, power: 117.008 },
    { nm: 500, power: 109.354 },
    { nm: 550, power: 104.046 },
    { nm: 560, power: 100 },
    { nm: 600, power: 90.0062 },
    { nm: 650, power: 80.0268 },
    { nm: 700, power: 71.6091 },
    { nm: 750, power: 63.5927 },
  ])('D65 at $nm nm', ({ nm, power }) => {
    expect(Math.abs(daylight(D65_K)(nm) / power - 1)).toBeLessThan(0.001);
  });
});

describe('Planckian light', () => {
  // CIE 15:2004: illuminant A is at x 0.44758, y 0.40745; T 2856 K, 2848 K × 1.4388/1.4350 (from memory).
  it('of 2856 K is illuminant A', () => {
    const [x, y] = xyOf(2856);
    expect(Math.abs(x - 0.44758)).toBeLessThan(0.002);
    expect(Math.abs(y - 0.40745)).toBeLessThan(0.002);
  });

  // ISO 11664-2, illuminant A: relative power (from memory).
  it.each([
    { nm: 400, power: 14.708 },
    { nm: 500, power: 59.8611 },
    { nm: 600, power: 129.043 },
    { nm: 700, power: 198.261 },
  ])('A at $nm nm', ({ nm, power }) => {
    expect(Math.abs(planckian(2856)(nm) / power - 1)).toBeLessThan(0.001);
  });

  // Wien's law: brightest at 2.898 mm·K / T.
  it('is brightest where Wien says', () => {
    const peak = 2.897771955e6 / 5000;
    const power = planckian(5000);
    expect(power(peak)).toBeGreaterThan(power(peak - 5));
    expect(power(peak)).toBeGreaterThan(power(peak + 5));
  });
});
