/**
 * Mired arithmetic against the conversion filters of the trade: shift in mired and the two colour
 * temperatures that each converts between, and their light loss in stops, as the tables of filter
 * makers and of textbooks print them (common practice, from memory).
 */
import { describe, expect, it } from 'vitest';
import { shiftedKelvin, stopsOfTransmission } from '../../shared/exposure/mired.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

/** Number of the filter, from K, to K, shift in mired. */
const FILTERS = [
  ['80A', 3200, 5500, -131],
  ['80B', 3400, 5500, -112],
  ['85', 5500, 3400, 112],
  ['85B', 5500, 3200, 131],
  ['81A', 3400, 3200, 18],
  ['82A', 3000, 3200, -21],
] as const;

/** The filter tables above: common practice, from memory. */
describe('a conversion filter', () => {
  it.each(FILTERS)('%s turns %s K into %s K', (_, from, to, mired) => {
    // Tables round the shift to a whole mired, which is 0.3% of the colour temperature here.
    expect(shiftedKelvin(from, mired)! / to).toBeCloseTo(1, 2);
  });

  it('is undone by its opposite, and two add up', () => {
    expect(shiftedKelvin(shiftedKelvin(5600, 131)!, -131)).toBeCloseTo(5600, 6);
    expect(shiftedKelvin(shiftedKelvin(5600, 81)!, 50)).toBeCloseTo(shiftedKelvin(5600, 131)!, 6);
  });

  it('leaves no colour temperature beyond the bluest', () => {
    expect(shiftedKelvin(5600, -179)).toBeNull();
  });

  it('loses a stop at half the light, two thirds of one at 63%', () => {
    expect(stopsOfTransmission(0.5)).toBe(1);
    expect(stopsOfTransmission(0.63)).toBeCloseTo(2 / 3, 2);
    expect(stopsOfTransmission(1)).toBe(0);
  });
});

/** A gel's shift and transmission as of filter 85B above, added by hand; common practice, from memory. */
describe('a gel on a light of a shot', () => {
  const GELS = {
    'kit/gels': '{ warm: { transmission: 63 %, shift: 131 mired }, half: { transmission: 50 % } }',
  };
  const errorWith = (relight: string): number =>
    coreWith(changed(EXAMPLE_PLAN, { ...GELS, 'shots/frost/relight': relight }))
      .figures(PLAN)
      .get('frost')!.exposureErrorStops as number;

  it('takes its light, and two take both', () => {
    const without = errorWith('{ panel: { dimmed: 0 stops } }');
    expect(without - errorWith('{ panel: { gels: [warm] } }')).toBeCloseTo(2 / 3, 2);
    expect(without - errorWith('{ panel: { gels: [warm, half] } }')).toBeCloseTo(5 / 3, 2);
    expect(without - errorWith('{ panel: { gels: [half], dimmed: 1 stop } }')).toBeCloseTo(2, 9);
  });

  // Once, however the subject shows the light: a film mirrors its face, a clear plate lets it through.
  it('takes its light once from what a mirror or a clear subject shows', () => {
    const skin = (gels: string) =>
      coreWith(
        changed(EXAMPLE_PLAN, { ...GELS, 'shots/skin/relight': `{ strip: { gels: ${gels} } }` }),
      )
        .figures(PLAN)
        .get('skin')!.exposureErrorStops as number;
    expect(skin('[]') - skin('[half]')).toBeCloseTo(1, 9);
    const clear = (gels: string) =>
      coreWith(
        changed(EXAMPLE_PLAN, {
          ...GELS,
          'subjects/frost-plate/transmittance': '90 %',
          'lights/panel/at': '{ distance: 60 mm, azimuth: 180 deg }',
          'lights/panel/luminance': '3000 cd/m2',
          'lights/panel/reading': null,
          'shots/frost/relight': `{ panel: { gels: ${gels} } }`,
        }),
      )
        .figures(PLAN)
        .get('frost')!.exposureErrorStops as number;
    expect(clear('[]') - clear('[half]')).toBeCloseTo(1, 9);
  });

  it('takes none from a reading that was made behind it', () => {
    const reading = 'reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: this-rig }';
    expect(errorWith(`{ panel: { gels: [half], ${reading} } }`)).toBeCloseTo(
      errorWith(`{ panel: { ${reading} } }`),
      9,
    );
  });

  it('changes the colour that white balance is judged by', () => {
    const text = changed(EXAMPLE_PLAN, {
      ...GELS,
      'shots/frost/relight': '{ panel: { gels: [warm] } }',
      edit: '{ cuts: { one: { shot: frost, duration: 4 s }, two: { shot: skin, duration: 4 s } } }',
    });
    const split = findingsOf(text).find(({ rule }) => rule === 'grade-splits');
    // 1e6 / 5600 K + 131 = 309.6 mired: 3230 K.
    expect(split?.what).toContain('3230 K');
  });
});
