/**
 * Films on a liquid. Sources: OpenStax, College Physics, ch. 27, and textbook exercises on oil slicks;
 * the characteristic matrix of a layer (Born and Wolf, Principles of Optics, ch. 1.6), by brute
 * force here; appearance of oil on water by thickness (Bonn Agreement Oil Appearance Code, from memory).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filmReflectance, reflectanceEnds } from '../../shared/film/reflectance.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { uncertainIn } from '../support/uncertain.ts';

type Complex = readonly [re: number, im: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];
const size2 = ([a, b]: Complex): number => a * a + b * b;

/** |r|² of one layer by its characteristic matrix, for one polarisation. */
function byMatrix(
  nm: number,
  wavelength: number,
  index: number,
  angle: number,
  under: number,
  polarisation: 's' | 'p',
): number {
  const cos = (n: number) => Math.sqrt(1 - (Math.sin(angle) / n) ** 2);
  const admittance = (n: number) => (polarisation === 's' ? n * cos(n) : cos(n) / n);
  const phase = (2 * Math.PI * index * nm * cos(index)) / wavelength;
  const [first, layer, last] = [1, index, under].map(admittance) as [number, number, number];
  const [m11, m12]: [Complex, Complex] = [
    [Math.cos(phase), 0],
    [0, -Math.sin(phase) / layer],
  ];
  const m21: Complex = [0, -layer * Math.sin(phase)];
  const upper = times(plus(m11, times(m12, [last, 0])), [first, 0]);
  const lower = plus(m21, times(m11, [last, 0]));
  return size2(plus(upper, times(lower, [-1, 0]))) / size2(plus(upper, lower));
}

describe('reflectance (characteristic matrix, Born and Wolf)', () => {
  it('is the matrix’s, whatever film lies on whatever liquid, however it is seen', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3000, noNaN: true }),
        fc.double({ min: 380, max: 780, noNaN: true }),
        fc.double({ min: 1.05, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 1.3, noNaN: true }),
        fc.double({ min: 1.05, max: 2, noNaN: true }),
        (nm, wavelength, index, angle, under) => {
          const one = (of: 's' | 'p') => byMatrix(nm, wavelength, index, angle, under, of);
          expect(filmReflectance(nm, wavelength, index, angle, under)).toBeCloseTo(
            (one('s') + one('p')) / 2,
            10,
          );
        },
      ),
      { numRuns: manyRuns(200) },
    );
  });

  it('of oil of 1.47 on water lies between 2.0 and 5.6 %', () => {
    const [least, most] = reflectanceEnds(1.47, 0, 1.333);
    expect(least).toBeCloseTo(0.0204, 4);
    expect(most).toBeCloseTo(0.0561, 4);
  });

  // OpenStax, College Physics, ch. 27: 120 nm of n 1.40 on water is brightest at 4·n·d, 672 nm.
  // An exercise of many textbooks: 324 nm of n 1.50 on water is brightest at 648 nm, darkest at 486 nm.
  it.each([
    [120, 1.4, 672, 'brightest'],
    [324, 1.5, 648, 'brightest'],
    [324, 1.5, 486, 'darkest'],
  ] as const)('%i nm of n %f is at %i nm at its %s', (nm, index, wavelength, how) => {
    const at = (length: number) => filmReflectance(nm, length, index, 0, 1.333);
    for (const other of [wavelength - 15, wavelength + 15])
      if (how === 'brightest') expect(at(other)).toBeLessThan(at(wavelength));
      else expect(at(other)).toBeGreaterThan(at(wavelength));
  });
});

const SLICK: Readonly<Record<string, string | null>> = {
  'subjects/soap':
    '{ kind: surface, size: 160 x 100 mm, finish: mirror, film: { refractive-index: 1.47, thickness: 100 nm } }',
  'shots/skin/tilt': '0 deg',
};
const skinWith = (film: string) =>
  coreWith(changed(EXAMPLE_PLAN, { ...SLICK, 'subjects/soap/film': film }))
    .figures(PLAN)
    .get('skin')!;

describe('a plan’s film on water', () => {
  it('shows little colour as a sheen and much as a rainbow (Bonn Agreement: 0.04 to 0.3, 0.3 to 5 µm)', () => {
    /** How far x and y lie from those of the light, as the thinnest film shows it. */
    const colourOf = (nm: number): number => {
      const { filmColours } = skinWith(`{ refractive-index: 1.47, thickness: ${nm} nm }`);
      const xyz = (filmColours as unknown as { swatches: { xyz: [number, number, number] }[] })
        .swatches[0]!.xyz;
      const sum = xyz[0] + xyz[1] + xyz[2];
      return Math.hypot(xyz[0] / sum - 0.332, xyz[1] / sum - 0.347);
    };
    for (const sheen of [10, 40, 80]) expect(colourOf(sheen)).toBeLessThan(0.04);
    expect(Math.max(...[300, 350, 400, 450, 500].map(colourOf))).toBeGreaterThan(0.08);
    expect(colourOf(9000)).toBeLessThan(0.02);
  });

  it('has bounds while nobody says how thick it is: least to most, the mean between', () => {
    const text = changed(EXAMPLE_PLAN, {
      ...SLICK,
      'subjects/soap/film': '{ refractive-index: 1.47 }',
      'subjects/soap/refractive-index': '1.333',
    });
    const skin = uncertainIn(text).get('skin')!;
    const bounds = skin.bounds((figures) => figures.reflectance)!;
    expect(bounds.low).toBeCloseTo(0.0204, 4);
    expect(bounds.high).toBeCloseTo(0.0561, 4);
    // Brute force: the mean over one whole turn of the phase.
    const turn = 550 / (2 * 1.47);
    const all = Array.from({ length: 2000 }, (_, at) =>
      filmReflectance((at / 2000) * turn, 550, 1.47, 0, 1.333),
    );
    const mean = all.reduce((sum, one) => sum + one, 0) / all.length;
    const { reflectance } = skin.middle.figures;
    expect(reflectance.known && reflectance.value).toBeCloseTo(mean, 6);
    expect(bounds.widenedBy.map(({ width }) => `${width.key} of ${width.of}`)).toEqual([
      'thickness of soap',
    ]);
  });

  it('names no orders where the film’s index is under the liquid’s', () => {
    const { filmColours, notKnown, reflectance } = skinWith(
      '{ refractive-index: 1.3, thickness: 100 nm }',
    );
    expect(filmColours).toBeNull();
    expect(notKnown.filmColours).toContain('lower index');
    expect(reflectance).toBeGreaterThan(0.01);
  });

  it('without a film shows what Fresnel’s law says of water: 2 % (Hecht, Optics)', () => {
    const bare = changed(EXAMPLE_PLAN, {
      ...SLICK,
      'subjects/soap': '{ kind: surface, finish: mirror, refractive-index: 1.333 }',
    });
    expect(coreWith(bare).figures(PLAN).get('skin')!.reflectance).toBeCloseTo(0.0204, 4);
  });

  // Still water shows the lamp or nothing, milk is lit like paper (common practice): neither is assumed.
  it.each([
    ['a meter reading', {}],
    ['lux', { 'lights/panel/reading': null, 'lights/panel/illuminance': '900 lx' }],
  ])('has no exposure by %s before its finish is said', (_, light) => {
    const lying = (finish: string) =>
      coreWith(
        changed(EXAMPLE_PLAN, {
          ...light,
          'subjects/frost-plate': `{ kind: surface, size: 200 x 150 mm, depth: 0.5 mm${finish} }`,
        }),
      )
        .figures(PLAN)
        .get('frost')!;
    const bare = lying('');
    expect(bare.exposureErrorStops).toBeNull();
    expect(bare.notKnown.exposureErrorStops).toBe('needs `finish` of frost-plate');
    expect(lying(', finish: matt').exposureErrorStops).toBeTypeOf('number');
  });
});
