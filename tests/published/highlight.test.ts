/**
 * A lamp's image in gloss, against mid-grey. Sources: the closed form of a rectangle's projected solid
 * angle (J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors, B-4; from memory);
 * ISO 2720, K 12.5 and C 250 (from memory); Fresnel's equations (Hecht, Optics).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { highlightOverGreyStops } from '../../shared/exposure/highlight.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { summedWeight } from './support/summed-face.ts';

/** sr, of a rectangle square to the line from the subject's middle, which is turned by `deg`. */
function rectangleSr(width: number, height: number, distance: number, deg: number): number {
  const [a, b] = [width / 2 / distance, height / 2 / distance];
  const one = (x: number, y: number) => (x / Math.hypot(1, x)) * Math.atan(y / Math.hypot(1, x));
  return 2 * (one(a, b) + one(b, a)) * Math.cos((deg * Math.PI) / 180);
}

const frostWith = (change: Readonly<Record<string, string | null>>) =>
  coreWith(
    changed(EXAMPLE_PLAN, {
      'subjects/frost-plate/finish': 'gloss',
      'shots/frost/iso': 'auto',
      ...change,
    }),
  )
    .figures(PLAN)
    .get('frost')!;

const lamp = (size: string, distance: number) =>
  `{ kind: led, emitting-size: ${size} mm, at: { distance: ${distance} mm, elevation: 45 deg }, modulation: none, reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter } }`;

describe('the image of a lamp at 45°, stops over mid-grey (ISO 2720; Howell B-4)', () => {
  it.each([
    ['a panel on polished metal', 300, 200, 350, '60 %', 5.3],
    ['a softbox on polished metal', 600, 600, 400, '60 %', 3.7],
    ['a panel on a crystal', 300, 200, 350, '4 %', 1.4],
  ] as const)('%s', (_, width, height, distance, share, worked) => {
    const { highlightStops } = frostWith({
      'lights/panel': lamp(`${width} x ${height}`, distance),
      'subjects/frost-plate/reflectance': share,
    });
    expect(highlightStops).toBeCloseTo(worked, 1);
    const luminance = 1;
    const grey = (12.5 * luminance * rectangleSr(width, height, distance, 45)) / 250;
    const image = (Number.parseFloat(share) / 100) * luminance;
    expect(highlightStops).toBeCloseTo(Math.log2(image / grey), 6);
  });

  it('is a perfectly diffuse white’s under an even sky: log2(20/π), 2.67', () => {
    // A mirror under a sky of luminance 1 shows 1; mid-grey is K·π/C.
    expect(highlightOverGreyStops(1, Math.PI, 12.5, 250)).toBeCloseTo(Math.log2(20 / Math.PI), 12);
  });

  it('follows the exposure, however it is set', () => {
    const at = (iso: string) =>
      frostWith({ 'shots/frost/iso': iso, 'subjects/frost-plate/reflectance': '4 %' });
    expect(
      (at('1600').highlightStops as number) - (at('400').highlightStops as number),
    ).toBeCloseTo(2, 9);
  });

  it('takes Fresnel’s reflectance from a refractive index: 4 % at 1.5', () => {
    const { reflectance } = frostWith({ 'subjects/frost-plate/refractive-index': '1.5' });
    expect(reflectance).toBeCloseTo(0.04, 9);
  });
});

// Lamps summed piece by piece, by brute force.
it('several lamps: the brightest image, against what all of them give together', () => {
  const face = fc.record({
    width: fc.integer({ min: 40, max: 400 }),
    height: fc.integer({ min: 40, max: 300 }),
    distance: fc.integer({ min: 250, max: 1500 }),
    upDeg: fc.integer({ min: -30, max: 30 }),
    acrossDeg: fc.integer({ min: -30, max: 30 }),
  });
  fc.assert(
    fc.property(face, face, fc.integer({ min: 1, max: 30 }), (one, other, times) => {
      const text = (of: typeof one, luminance: number) =>
        `{ kind: led, emitting-size: ${of.width} x ${of.height} mm, at: { distance: ${of.distance} mm, elevation: ${of.upDeg} deg, azimuth: ${of.acrossDeg} deg }, modulation: none, luminance: ${luminance} cd/m2 }`;
      const { highlightStops } = frostWith({
        'lights/panel': text(one, 1000),
        'lights/bulb': text(other, 1000 * times),
        'shots/frost/light': '[panel, bulb]',
        'subjects/frost-plate/reflectance': '10 %',
      });
      const given = [one, other].map((of) => summedWeight(of, [0, 0, 1], [0, 0, 0], 40));
      const lux = 1000 * given[0]! + 1000 * times * given[1]!;
      const grey = (12.5 * lux) / 250;
      const off = (highlightStops as number) - Math.log2((0.1 * 1000 * times) / grey);
      expect(Math.abs(off)).toBeLessThan(0.01);
    }),
    { numRuns: manyRuns(12) },
  );
}, 3_600_000);
