/**
 * Light from behind, and a crystal between polarisers. Sources: Michel-Lévy's chart by the names that
 * textbooks of mineral optics print beside its retardations (list after G. Quincke, from memory; hues
 * as on the sRGB circle); Jones matrices (R. C. Jones, 1941; Hecht, Optics), by brute force here;
 * ISO 2720 with K 12.5 (from memory).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  crossedTransmission,
  meanTransmission,
  retardationColour,
  retardationTristimulus,
} from '../../shared/film/retardation.ts';
import { filledFromBehind } from '../../shared/mirror/behind.ts';
import { meetPlane, planeOf } from '../../shared/mirror/source.ts';
import { unit } from '../../shared/mirror/vector.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';

const DAYLIGHT_K = 6504;

/** Hue on the sRGB circle in degrees, and how pure it is, 0 to 1. */
function hueOf(retardationNm: number): { readonly hue: number; readonly pure: number } {
  const { red, green, blue } = retardationColour(DAYLIGHT_K, DAYLIGHT_K, retardationNm).screen;
  const [most, least] = [Math.max(red, green, blue), Math.min(red, green, blue)];
  const span = most - least;
  const turn =
    most === red
      ? (green - blue) / span
      : most === green
        ? 2 + (blue - red) / span
        : 4 + (red - green) / span;
  return { hue: (360 + 60 * turn) % 360, pure: span / most };
}

// Names of Michel-Lévy's chart as textbooks print them (after G. Quincke; from memory).
describe('colours between crossed polarisers', () => {
  it.each([
    [97, 'lavender grey', 200, 260, 0.1, 0.4],
    [158, 'greyish blue', 200, 240, 0.1, 0.4],
    [306, 'light yellow', 40, 65, 0.05, 0.4],
    [430, 'brownish yellow', 25, 50, 0.7, 1],
    [565, 'purple', 250, 320, 0.6, 1],
    [589, 'indigo', 215, 265, 0.6, 1],
    [664, 'sky blue', 185, 215, 0.6, 1],
    [866, 'greenish yellow', 50, 75, 0.5, 1],
    [910, 'pure yellow', 45, 60, 0.5, 1],
    [948, 'orange', 15, 40, 0.4, 1],
    [1128, 'light bluish violet', 235, 275, 0.4, 1],
    [1334, 'green', 90, 150, 0.4, 1],
  ] as const)('%i nm: %s', (nm, _, from, to, dull, vivid) => {
    const { hue, pure } = hueOf(nm);
    expect(hue).toBeGreaterThanOrEqual(from);
    expect(hue).toBeLessThanOrEqual(to);
    expect(pure).toBeGreaterThanOrEqual(dull);
    expect(pure).toBeLessThanOrEqual(vivid);
  });

  it('black at 0 nm, white at 259 nm, pale in high orders', () => {
    expect(retardationTristimulus(DAYLIGHT_K, 0).y).toBe(0);
    expect(hueOf(259).pure).toBeLessThan(0.06);
    expect(retardationTristimulus(DAYLIGHT_K, 259).y).toBeGreaterThan(95);
    expect(hueOf(10_000).pure).toBeLessThan(0.1);
  });
});

// R. C. Jones, J. Opt. Soc. Am. 31, 488 (1941): matrices of polarisers and retarders.
describe('transmission', () => {
  it('is that of a retarder between two sheets (Jones)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.double({ min: 380, max: 780, noNaN: true }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        (retardation, wavelength, axis) => {
          // Along x into the retarder, along y out of it: (R(−θ)·diag(1, e^iδ)·R(θ)) of yx.
          const phase = (2 * Math.PI * retardation) / wavelength;
          const [c, s] = [Math.cos(axis), Math.sin(axis)];
          const re = c * s - c * s * Math.cos(phase);
          const im = -c * s * Math.sin(phase);
          expect(crossedTransmission(retardation, wavelength, axis)).toBeCloseTo(
            re * re + im * im,
            10,
          );
        },
      ),
      { numRuns: manyRuns(100) },
    );
  });

  it('over a range of thicknesses is the mean of its slices', () => {
    for (const [from, to] of [
      [0, 300],
      [180, 540],
      [1000, 1000],
      [2000, 9000],
    ] as const) {
      const slices = 400;
      const sum = Array.from({ length: slices }, (_, at) => {
        const nm = from + ((to - from) * (at + 0.5)) / slices;
        return retardationTristimulus(DAYLIGHT_K, nm).y;
      }).reduce((all, y) => all + y, 0);
      expect(meanTransmission(DAYLIGHT_K, from, to)).toBeCloseTo(sum / slices / 100, 3);
    }
  });
});

const LAMP = (more: string) =>
  `{ kind: led, emitting-size: 120 x 90 mm, at: { distance: 60 mm, azimuth: 180 deg }, colour-temperature: 6504 K, modulation: none, supply: low-voltage, luminance: 3000 cd/m2${more} }`;

const frostWith = (change: Readonly<Record<string, string | null>>) =>
  coreWith(
    changed(EXAMPLE_PLAN, {
      'subjects/frost-plate/transmittance': '90 %',
      'lights/panel': LAMP(''),
      ...change,
    }),
  )
    .figures(PLAN)
    .get('frost')!;

const POLARISED: Readonly<Record<string, string | null>> = {
  'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
  'shots/frost/filters': '[polariser]',
  'lights/panel': LAMP(', polarised: crossed'),
  'subjects/frost-plate/birefringence': '0.009',
};

describe('exposure by the luminance behind (ISO 2720)', () => {
  it('bright field: N²/t = τ·L·S/K', () => {
    const { exposureErrorStops, effectiveFNumber } = frostWith({
      'kit/lenses/macro-100/loss': '0 stops',
    });
    const has = Math.log2((0.9 * 3000 * 1250) / 12.5);
    const needs = Math.log2((effectiveFNumber as number) ** 2 * 50);
    expect(exposureErrorStops).toBeCloseTo(has - needs, 6);
  });

  // E = L·∫cos²θ/r² dA on the axis of an even face (Lambert, Photometria), summed over small pieces.
  it('lux of a data sheet say as much as the luminance that gives them', () => {
    let weight = 0;
    for (let x = -59.5; x < 60; x++)
      for (let y = -44.5; y < 45; y++) weight += 500 ** 2 / (500 ** 2 + x ** 2 + y ** 2) ** 2;
    const sheet = `illuminance: ${3000 * weight} lx, illuminance-distance: 500 mm`;
    const { exposureErrorStops } = frostWith({
      'lights/panel': LAMP('').replace('luminance: 3000 cd/m2', sheet),
    });
    expect(exposureErrorStops).toBeCloseTo(frostWith({}).exposureErrorStops as number, 3);
  });

  it('asks how large the face behind is', () => {
    const { exposureErrorStops, notKnown } = frostWith({
      'lights/panel': LAMP('')
        .replace('emitting-size: 120 x 90 mm, ', '')
        .replace('luminance: 3000 cd/m2', 'illuminance: 900 lx, illuminance-distance: 1 m'),
    });
    expect(exposureErrorStops).toBeNull();
    expect(notKnown.exposureErrorStops).toContain('emitting-size');
  });

  it('crossed: times the mean transmission, with half the light spared by its polarisation', () => {
    const bright = frostWith({}).exposureErrorStops as number;
    const { exposureErrorStops, passedShare, retardationNm } = frostWith({
      ...POLARISED,
      'subjects/frost-plate/thickness': '20 to 40 um',
    });
    const mean = meanTransmission(DAYLIGHT_K, 180, 360);
    expect(passedShare).toBeCloseTo(0.9 * mean, 9);
    expect(retardationNm).toEqual([180, 360]);
    // 1.5 stops of the filter, of which 1 stop is not lost on light that is polarised already.
    expect((exposureErrorStops as number) - bright).toBeCloseTo(Math.log2(mean) - 1.5 + 1, 6);
  });

  // Malus: an ideal sheet takes 1 stop of light that is not polarised; real ones 1.2 to 2 (common practice).
  it('a sheet that the shot puts on the light takes its own loss, which is bounded', () => {
    const crystal = { ...POLARISED, 'subjects/frost-plate/thickness': '20 to 40 um' };
    const had = frostWith(crystal).exposureErrorStops as number;
    const bare = { ...crystal, 'lights/panel': LAMP('') };
    const on = 'shots/frost/relight';
    const put = (more = '') =>
      frostWith({ ...bare, [on]: `{ panel: { polarised: crossed${more} } }` });
    expect((put().exposureErrorStops as number) - had).toBeCloseTo(-1.6, 6);
    // By hand: 3000 cd/m² through sheet, crystal and filter; half of what the filter takes is spared.
    const lost = -1.6 + Math.log2(meanTransmission(DAYLIGHT_K, 180, 360)) - 1.5 + 1;
    const open = frostWith({ 'lights/panel': LAMP('') }).exposureErrorStops as number;
    expect((put().exposureErrorStops as number) - open).toBeCloseTo(lost, 6);
    // A brightness that the shot gives is that behind its sheet.
    expect(put(', luminance: 3000 cd/m2').exposureErrorStops).toBeCloseTo(had, 9);
    // Taking off the sheet that the light had gives its light back.
    const off = frostWith({ ...crystal, [on]: '{ panel: { polarised: none } }' });
    expect((off.exposureErrorStops as number) - open).toBeCloseTo(1.6 - 1.5, 6);
  });

  it('asks what a solid lets through where its only light is behind it', () => {
    const opaque = coreWith(changed(EXAMPLE_PLAN, { 'lights/panel': LAMP('') }))
      .figures(PLAN)
      .get('frost')!;
    expect(opaque.exposureErrorStops).toBeNull();
    expect(opaque.notKnown.exposureErrorStops).toContain('transmittance');
  });

  it('is not guessed of a dark field, nor of a crystal without its thickness', () => {
    const dark = frostWith({
      'lights/panel/at': '{ distance: 300 mm, azimuth: 140 deg }',
    });
    expect(dark.backlitShare).toBe(0);
    expect(dark.exposureErrorStops).toBeNull();
    expect(dark.notKnown.exposureErrorStops).toContain('scattered light');
    expect(frostWith(POLARISED).notKnown.exposureErrorStops).toContain('thickness');
  });
});

// Rays traced one by one, by brute force, apart from the code's polygons (Hecht, Optics: light goes straight).
it('a face behind fills what straight rays through the frame meet', () => {
  const view = { widthMm: 60, heightMm: 33.75, pupilDistanceMm: 300, pupilMm: 10 };
  fc.assert(
    fc.property(
      fc.record({
        widthMm: fc.integer({ min: 20, max: 200 }),
        heightMm: fc.integer({ min: 20, max: 200 }),
        distanceMm: fc.integer({ min: 30, max: 400 }),
        upRad: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        acrossRad: fc.double({ min: 2.4, max: 3.14, noNaN: true }),
      }),
      ({ widthMm, heightMm, ...spot }) => {
        const source = { face: { shape: 'rectangle', widthMm, heightMm } as const, ...spot };
        const plane = planeOf(source);
        const steps = 60;
        let met = 0;
        for (let i = 0; i < steps * steps; i++) {
          const x = ((i % steps) + 0.5) / steps - 0.5;
          const y = (Math.floor(i / steps) + 0.5) / steps - 0.5;
          const at = [x * view.widthMm, y * view.heightMm, -view.pupilDistanceMm] as const;
          const hit = meetPlane(plane, [0, 0, view.pupilDistanceMm], unit(at));
          // The ray goes on from the pupil through the frame's plane, which is at z = 0.
          if (hit && Math.abs(hit[0]) < widthMm / 2 && Math.abs(hit[1]) < heightMm / 2) met += 1;
        }
        expect(Math.abs(filledFromBehind(view, source) - met / steps ** 2)).toBeLessThan(0.02);
      },
    ),
    { numRuns: manyRuns(60) },
  );
});
