/**
 * How much a film returns by its thickness: a spectrum summed here, apart from the code, and another
 * implementation's figures, against what a plan's figures and findings say.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

// CIE 15:2004, tables T.1 (D65) and T.4 (ȳ), every 10 nm from 380 to 780 nm; from memory.
// biome-ignore format: a table reads best in rows
const D65 = [
  49.9755, 54.6482, 82.7549, 91.486, 93.4318, 86.6823, 104.865, 117.008, 117.812, 114.861, 115.923,
  108.811, 109.354, 107.802, 104.79, 107.689, 104.405, 104.046, 100, 96.3342, 95.788, 88.6856,
  90.0062, 89.5991, 87.6987, 83.2886, 83.6992, 80.0268, 80.2146, 82.2778, 78.2842, 69.7213, 71.6091,
  74.349, 61.604, 69.8856, 75.087, 63.5927, 46.4182, 66.8054, 63.3828,
];
// biome-ignore format: a table reads best in rows
const Y_BAR = [
  0.000039, 0.00012, 0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098, 0.13902,
  0.20802, 0.323, 0.503, 0.71, 0.862, 0.954, 0.99495, 0.995, 0.952, 0.87, 0.757, 0.631, 0.503,
  0.381, 0.265, 0.175, 0.107, 0.061, 0.032, 0.017, 0.00821, 0.004102, 0.002091, 0.001047, 0.00052,
  0.000249, 0.00012, 0.00006, 0.00003, 0.000015,
];

/** Planckian light at 2856 K, as the CIE's A is (c2 of today). */
const A = D65.map((_, i) => {
  const metres = (380 + 10 * i) * 1e-9;
  return 1 / (metres ** 5 * Math.expm1(0.01438776877 / (metres * 2856)));
});

/** Airy's sum, square on, n 1.33: the film's faces throw back r² = ((n − 1)/(n + 1))² each. */
function airySum(thicknessNm: number, wavelengthNm: number): number {
  const r2 = (0.33 / 2.33) ** 2;
  const sin2 = Math.sin((2 * Math.PI * 1.33 * thicknessNm) / wavelengthNm) ** 2;
  return (4 * r2 * sin2) / ((1 - r2) ** 2 + 4 * r2 * sin2);
}

function summed(light: readonly number[], thicknessNm: number): number {
  let [of, all] = [0, 0];
  light.forEach((power, i) => {
    const weight = power * (Y_BAR[i] as number);
    of += weight * airySum(thicknessNm, 380 + 10 * i);
    all += weight;
  });
  return of / all;
}

/** Middles of a thousand slices of the range. */
const slices = (from: number, to: number): readonly number[] =>
  Array.from({ length: 1000 }, (_, i) => from + ((to - from) * (i + 0.5)) / 1000);

const meanSummed = (light: readonly number[], from: number, to: number): number =>
  slices(from, to).reduce((sum, nm) => sum + summed(light, nm), 0) / 1000;

const planWith = (thickness: string | null, more: Readonly<Record<string, string | null>> = {}) =>
  changed(EXAMPLE_PLAN, {
    'subjects/soap/refractive-index': '1.33',
    ...(thickness !== null && { 'subjects/soap/thickness': thickness }),
    'shots/skin/tilt': '0 deg',
    'lights/strip/colour-temperature': '6504 K',
    ...more,
  });

const figures = (...of: Parameters<typeof planWith>) =>
  coreWith(planWith(...of))
    .figures(PLAN)
    .get('skin') as unknown as {
    reflectance: number | null;
    exposureErrorStops: number;
    isoNeeded: number;
    strayRatio: number;
    darkestBand: { thicknessNm: number; reflectance: number } | null;
    brightestBand: { thicknessNm: number; reflectance: number };
    notKnown: Readonly<Record<string, string>>;
  };

const off = (found: number | null, expected: number): number =>
  Math.abs((found ?? Number.NaN) / expected - 1);

// CIE 15:2004 tables (from memory) and the Airy sum over the spectrum, by brute force; spec2cie's figures.
describe('reflectance of a film of one thickness', () => {
  // The darkest are what is left of two large parts: a hundredth of the peak is 1 % of 7.7 %.
  it.each([15, 100, 150, 200, 300, 400, 500, 650])('%i nm in daylight', (nm) => {
    const { reflectance } = figures(`${nm} nm`);
    expect(Math.abs((reflectance ?? Number.NaN) - summed(D65, nm))).toBeLessThan(0.0003);
  });

  it.each([100, 300, 500])('%i nm under a filament', (nm) => {
    const { reflectance } = figures(`${nm} nm`, { 'lights/strip/colour-temperature': '2856 K' });
    expect(Math.abs((reflectance ?? Number.NaN) - summed(A, nm))).toBeLessThan(0.0003);
  });

  // Argyll CMS 2.3.1, `spec2cie -n -i LIGHT -o 1931_2`, fed with Airy's closed form at n 1.33: Y.
  it.each([
    ['100 nm', '6504 K', 7.59351],
    ['300 nm', '6504 K', 6.74765],
    ['500 nm', '6504 K', 5.52119],
    ['100 nm', '5003 K', 7.58738],
    ['500 nm', '2856 K', 4.95914],
  ])('%s at %s, against spec2cie', (thickness, colour, y) => {
    const { reflectance } = figures(thickness, { 'lights/strip/colour-temperature': colour });
    expect(off(reflectance, y / 100)).toBeLessThan(0.01);
  });
});

// Brute force: the spectra above, summed over the range with CIE 15:2004 weights (from memory).
describe('reflectance over a range', () => {
  it.each([
    [1, 30],
    [80, 700],
    [150, 250],
    [1, 1000],
    [300, 302],
  ])('%i to %i nm', (from, to) => {
    expect(off(figures(`${from} to ${to} nm`).reflectance, meanSummed(D65, from, to))).toBeLessThan(
      0.01,
    );
  });

  it.each([
    [80, 700],
    [150, 250],
    [250, 620],
  ])('%i to %i nm: brightest and darkest band', (from, to) => {
    const { brightestBand, darkestBand } = figures(`${from} to ${to} nm`);
    const all = [from, ...slices(from, to), to].map((nm) => ({ nm, share: summed(D65, nm) }));
    const most = all.reduce((best, next) => (next.share > best.share ? next : best));
    const least = all.reduce((best, next) => (next.share < best.share ? next : best));
    expect(Math.abs(brightestBand.thicknessNm - most.nm)).toBeLessThan(1.5);
    expect(Math.abs((darkestBand?.thicknessNm ?? Number.NaN) - least.nm)).toBeLessThan(1.5);
    expect(off(brightestBand.reflectance, most.share)).toBeLessThan(0.01);
    expect(Math.abs((darkestBand?.reflectance ?? Number.NaN) - least.share)).toBeLessThan(0.0003);
  });

  it('without a thickness is half the peak, as over all of them', () => {
    const peak = airySum(1, 4 * 1.33);
    expect(off(figures(null).reflectance, peak / 2)).toBeLessThan(0.03);
    expect(off(figures(null).reflectance, meanSummed(D65, 0, 9000))).toBeLessThan(0.01);
    expect(figures(null).darkestBand).toBeNull();
  });

  it('of films too thick for colours is the same', () => {
    const { reflectance, darkestBand, notKnown } = figures('12 to 20 um');
    expect(off(reflectance, figures(null).reflectance ?? Number.NaN)).toBeLessThan(1e-9);
    expect(darkestBand).toBeNull();
    expect(notKnown.darkestBand).toContain('10 µm');
    expect(off(figures('8 to 20 um').reflectance, reflectance ?? 0)).toBeLessThan(0.01);
  });
});

// Brute force: stops from the spectra summed above.
describe('what follows from it', () => {
  const bare = figures(null);

  // Stops against the mean over all thicknesses, by the sums above: -3.2, 0.9 and -2.9.
  it.each([15, 100, 200])('the exposure of a film of %i nm', (nm) => {
    const of = figures(`${nm} nm`);
    const stops = Math.log2(summed(D65, nm) / meanSummed(D65, 0, 9000));
    expect(Math.abs(of.exposureErrorStops - bare.exposureErrorStops - stops)).toBeLessThan(0.05);
    expect(Math.abs(Math.log2(of.isoNeeded / bare.isoNeeded) + stops)).toBeLessThan(0.05);
  });

  it('a background that a coloured film stands washes a black one out', () => {
    const more = { 'shots/skin/background-luminance': '20 cd/m2' };
    const washed = (thickness: string | null) =>
      coreWith(planWith(thickness, more))
        .findings(PLAN)
        .some(({ rule }) => rule === 'background-washes');
    expect(figures('15 nm', more).strayRatio / figures(null, more).strayRatio).toBeCloseTo(9.3, 1);
    expect([washed(null), washed('100 nm'), washed('15 nm')]).toEqual([false, false, true]);
  });

  it('takes the light’s colour from the light, or daylight’s where none changes it', () => {
    const without = { 'lights/strip/colour-temperature': null };
    expect(
      off(figures('80 to 700 nm', without).reflectance, meanSummed(D65, 80, 700)),
    ).toBeLessThan(0.01);
    const dark = figures('200 nm', without);
    expect(dark.reflectance).toBeNull();
    expect(dark.notKnown.reflectance).toBe('needs `colour-temperature` of strip');
  });
});
