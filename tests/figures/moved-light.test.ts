/**
 * Lights on a subject that scatters, at other places than they were read at. Expected values are summed
 * here over small pieces of the source, each by the inverse-square and cosine laws (Lambert, Photometria).
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

/** Stops that cloths from a light to a dense one take: common practice, from memory. */
const CLOTH = { low: 0.5, middle: 1.5, high: 3 };

/** Exposure error of the shot `frost`, stops. */
const errorWith = (change: Readonly<Record<string, string | null>>): number =>
  coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('frost')!.exposureErrorStops as number;

/** E/L of a rectangle that faces the origin from `distance`, raised by `up`; the surface faces z. */
function summed(width: number, height: number, distance: number, upDeg: number): number {
  const up = (upDeg * Math.PI) / 180;
  const pieces = 200;
  const area = (width / pieces) * (height / pieces);
  let sum = 0;
  for (let i = 0; i < pieces; i++)
    for (let j = 0; j < pieces; j++) {
      const x = ((i + 0.5) / pieces - 0.5) * width;
      const y = ((j + 0.5) / pieces - 0.5) * height;
      const at = [
        x,
        distance * Math.sin(up) + y * Math.cos(up),
        distance * Math.cos(up) - y * Math.sin(up),
      ] as const;
      const squared = at[0] ** 2 + at[1] ** 2 + at[2] ** 2;
      const leaving = distance / Math.sqrt(squared);
      const arriving = at[2] / Math.sqrt(squared);
      sum += (leaving * arriving * area) / squared;
    }
  return sum;
}

const reading = '{ aperture: f/8, shutter: 1/50 s, iso: 400, through: meter';
const before = errorWith({});

describe('a panel that was moved since its reading', () => {
  it('loses what the integral over its face says, less than the inverse square', () => {
    const after = errorWith({
      'lights/panel/emitting-size': '600 x 400 mm',
      'lights/panel/at': '{ distance: 1000 mm, elevation: 40 deg }',
      'lights/panel/reading': `${reading}, distance: 500 mm }`,
    });
    const expected = Math.log2(summed(600, 400, 1000, 40) / summed(600, 400, 500, 40));
    expect(after - before).toBeCloseTo(expected, 3);
    expect(expected).toBeGreaterThan(-2);
  });

  it('follows the inverse square where it is small', () => {
    const after = errorWith({
      'lights/panel/emitting-size': '6 x 4 mm',
      'lights/panel/at': '{ distance: 1000 mm, elevation: 40 deg }',
      'lights/panel/reading': `${reading}, distance: 500 mm }`,
    });
    expect(after - before).toBeCloseTo(-2, 3);
  });

  it('in one shot only is counted from where the light says that it stands', () => {
    const after = errorWith({
      'shots/frost/relight': '{ panel: { at: { distance: 250 mm, elevation: 20 deg } } }',
    });
    const expected = Math.log2(summed(300, 200, 250, 20) / summed(300, 200, 400, 40));
    expect(after - before).toBeCloseTo(expected, 3);
  });

  it('has the face of its diffuser, whatever the shape of the lamp behind it', () => {
    const at = 'at: { distance: 250 mm, elevation: 20 deg }';
    const shot = { 'shots/frost/relight': `{ panel: { emitting-size: 600 x 400 mm, ${at} } }` };
    const round = { 'lights/panel/emitting-size': null, 'lights/panel/diameter': '180 mm' };
    const moved = Math.log2(summed(600, 400, 250, 20) / summed(600, 400, 400, 40));
    const expected = moved - CLOTH.middle;
    expect(errorWith(shot) - before).toBeCloseTo(expected, 3);
    expect(errorWith({ ...shot, ...round }) - before).toBeCloseTo(expected, 3);
    const uncertain = uncertainIn(changed(EXAMPLE_PLAN, shot)).get('frost')!;
    const index = uncertain.widths.findIndex(({ assumed }) => assumed === 'diffuser-loss');
    for (const [end, stops] of [
      [-1, CLOTH.low],
      [1, CLOTH.high],
    ] as const) {
      const { exposureErrorStops: there } = uncertain.alone(index, end).figures;
      expect(there.known && there.value - before).toBeCloseTo(moved - stops, 3);
    }
  });

  // A quarter of an even face's area gives a quarter of its light (Lambert), two stops less. By either
  // way of giving it, the diffuser is no brighter than the lamp behind it.
  it('and is larger than its diffuser loses what falls beside it', () => {
    const shot = { 'shots/frost/relight': '{ panel: { emitting-size: 150 x 100 mm } }' };
    expect(errorWith(shot) - before).toBeCloseTo(-2 - CLOTH.middle, 9);
    const shown = { 'lights/panel/reading': null, 'lights/panel/luminance': '3000 cd/m2' };
    const face = Math.log2(summed(150, 100, 400, 40) / summed(300, 200, 400, 40));
    expect(errorWith({ ...shown, ...shot }) - errorWith(shown)).toBeCloseTo(face - CLOTH.middle, 3);
    const unsized = { 'lights/panel/emitting-size': null };
    expect(errorWith({ ...shot, ...unsized }) - before).toBeCloseTo(-CLOTH.middle, 9);
  });

  it('and read behind its diffuser for the shot loses nothing to it', () => {
    const behind = `{ panel: { emitting-size: 600 x 400 mm, reading: ${reading} } } }`;
    expect(errorWith({ 'shots/frost/relight': behind })).toBeCloseTo(before, 9);
  });

  // The flux of a face that scatters evenly is π·L·A (Lambert, Photometria): four times the area, a
  // quarter of the luminance, two stops. A film shows the luminance, whatever the distance.
  it('and given by the luminance of its own face spreads it over its diffuser', () => {
    const shown = (relight: string) =>
      coreWith(changed(EXAMPLE_PLAN, { 'shots/skin/relight': `{ strip: { ${relight} } }` }))
        .figures(PLAN)
        .get('skin')!.exposureErrorStops as number;
    const bare = shown('polarised: none');
    expect(shown('emitting-size: 480 x 240 mm') - bare).toBeCloseTo(-2 - CLOTH.middle, 3);
    const behind = 'emitting-size: 480 x 240 mm, luminance: 12000 cd/m2';
    expect(shown(behind)).toBeCloseTo(bare, 3);
  });

  it('and read anew for the shot is as it was read', () => {
    const after = errorWith({
      'shots/frost/relight': `{ panel: { at: { distance: 250 mm }, reading: ${reading} } } }`,
    });
    expect(after).toBeCloseTo(before, 9);
  });

  // The inverse-square law; for the wide end the same sum as above, over a round face.
  it('and is of unknown size is a point, within what a face as wide as its distance does', () => {
    const plan = changed(EXAMPLE_PLAN, {
      'lights/panel/emitting-size': null,
      'lights/panel/at': '{ distance: 1000 mm, elevation: 40 deg }',
      'lights/panel/reading': `${reading}, distance: 500 mm }`,
    });
    const figures = coreWith(plan).figures(PLAN).get('frost')!;
    expect((figures.exposureErrorStops as number) - before).toBeCloseTo(-2, 9);
    const uncertain = uncertainIn(plan).get('frost')!;
    const index = uncertain.widths.findIndex(({ assumed }) => assumed === 'point-light');
    expect(uncertain.widths[index]).toMatchObject({ key: 'emitting-size', of: 'panel' });
    const { exposureErrorStops: wide } = uncertain.alone(index, 1).figures;
    if (!wide.known) throw new Error('it has no size');
    // A disc, square to the subject: E goes by 1/(distance² + radius²). The law of cosines of the
    // elevation is the same at both places.
    const disc = (distance: number) => 1 / (distance ** 2 + 250 ** 2);
    expect(wide.value - before).toBeCloseTo(Math.log2(disc(1000) / disc(500)), 1);
  });

  it('and is of unknown size needs nothing where it was not moved', () => {
    const core = coreWith(changed(EXAMPLE_PLAN, { 'lights/panel/emitting-size': null }));
    expect(core.figures(PLAN).get('frost')!.exposureErrorStops).toBeCloseTo(before, 9);
  });

  it('by its lux at another distance follows the same law', () => {
    const lux = {
      'lights/panel/reading': null,
      'lights/panel/emitting-size': null,
      'lights/panel/at': '{ distance: 400 mm, elevation: 40 deg }',
    };
    const given = (illuminance: string, distance?: string) =>
      errorWith({
        ...lux,
        'lights/panel/illuminance': illuminance,
        ...(distance !== undefined && { 'lights/panel/illuminance-distance': distance }),
      });
    // A data sheet's lux are on the axis, and the lamp stands 40 degrees up: Lambert's cosine law.
    const onSubject = (2200 / 0.4 ** 2) * Math.cos((40 * Math.PI) / 180);
    expect(given('2200 lx', '1 m')).toBeCloseTo(given(`${onSubject.toFixed(6)} lx`), 6);
    // Facing it at the same distance still isn't on a subject that looks elsewhere.
    const there = 2200 * Math.cos((40 * Math.PI) / 180);
    expect(given('2200 lx', '400 mm')).toBeCloseTo(given(`${there.toFixed(6)} lx`), 6);
  });

  it('by its lux given for the shot, whatever distance the data sheet measured at', () => {
    const plain = { 'lights/panel/reading': null, 'lights/panel/illuminance': '900 lx' };
    const relit = { 'shots/frost/relight': '{ panel: { illuminance: 1300 lx } }' };
    expect(
      errorWith({ ...plain, ...relit, 'lights/panel/illuminance-distance': '1 m' }),
    ).toBeCloseTo(errorWith({ ...plain, ...relit }), 9);
  });
});

describe('a light by the luminance of its face', () => {
  it('gives luminance times the face’s weight', () => {
    const luminance = 3000;
    const byLuminance = errorWith({
      'lights/panel/reading': null,
      'lights/panel/luminance': `${luminance} cd/m2`,
    });
    const lux = Math.round(luminance * summed(300, 200, 400, 40) * 1000) / 1000;
    const byIlluminance = errorWith({
      'lights/panel/reading': null,
      'lights/panel/illuminance': `${lux} lx`,
    });
    expect(byLuminance).toBeCloseTo(byIlluminance, 3);
  });

  it('follows the light to where the shot puts it, once', () => {
    const at = '{ distance: 250 mm, elevation: 20 deg }';
    const change = {
      'lights/panel/reading': null,
      'lights/panel/luminance': '3000 cd/m2',
    };
    const moved = errorWith({ ...change, 'shots/frost/relight': `{ panel: { at: ${at} } }` });
    const placed = errorWith({ ...change, 'lights/panel/at': at });
    expect(moved).toBeCloseTo(placed, 9);
  });
});

// Common practice: lamps of equal watts differ a hundredfold in their light.
describe('a light by its watts alone', () => {
  const watts = { 'lights/panel/reading': null, 'lights/panel/power': '60 W' };
  const reasonWith = (change: Readonly<Record<string, string | null>>): string | undefined => {
    const { notKnown } = coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('frost')!;
    return (notKnown as Record<string, string>).exposureErrorStops;
  };

  it('has no exposure, and says what watts do not', () => {
    expect(reasonWith(watts)).toBe(
      'needs `reading` of panel; watts say how much it draws, not how much light it gives: `illuminance` at a distance or `luminance` will do as well',
    );
  });

  it('adds no finding', () => {
    const findings = (change: Readonly<Record<string, string | null>>) =>
      coreWith(changed(EXAMPLE_PLAN, change))
        .findings(PLAN)
        .map(({ rule, what }) => [rule, what]);
    expect(findings(watts)).toEqual(findings({ 'lights/panel/reading': null }));
  });

  it('is not told of watts where its light is given otherwise, or where it has none', () => {
    expect(reasonWith({ 'lights/panel/reading': null })).toBe('needs `reading` of panel');
    expect(reasonWith({ ...watts, 'lights/panel/illuminance': '900 lx' })).toBeUndefined();
  });
});

// Calm water mirrors a few per cent (Fresnel) and scatters next to nothing: it is no grey card.
describe('a light on a liquid whose finish is not given', () => {
  const liquid = { 'subjects/frost-plate/kind': 'surface', 'subjects/frost-plate/finish': null };
  const lux = { 'lights/panel/reading': null, 'lights/panel/illuminance': '900 lx' };
  const exposed = (change: Readonly<Record<string, string | null>>) => {
    const core = coreWith(changed(EXAMPLE_PLAN, { ...liquid, ...change }));
    const { exposureErrorStops: stops, notKnown } = core.figures(PLAN).get('frost')!;
    return { stops, why: (notKnown as Record<string, string>).exposureErrorStops, core };
  };

  it.each([
    ['lux', lux],
    ['a meter', {}],
  ])('is of unknown effect by %s, and the finish is asked for', (_, change) => {
    const { stops, why, core } = exposed(change);
    expect(stops).toBeNull();
    expect(why).toBe('needs `finish` of frost-plate');
    const asked = core.findings(PLAN).filter(({ rule }) => rule === 'not-known');
    expect(asked.map(({ what }) => what)).toEqual([
      'Give `finish` of `frost-plate` next: 1 shot waits for it.',
    ]);
  });

  it('is known by a reading of the liquid itself, through this rig', () => {
    const itself = `{ panel: { reading: ${reading.replace('meter', 'this-rig')} } } }`;
    expect(exposed({ 'shots/frost/relight': itself }).stops).toEqual(expect.any(Number));
  });

  it('is known once it is matt', () => {
    const { stops } = exposed({ ...lux, 'subjects/frost-plate/finish': 'matt' });
    expect(stops).toBeCloseTo(errorWith(lux), 9);
  });
});
