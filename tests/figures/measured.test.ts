/** What was measured wins over what is computed, wherever it is read, and is said to be measured. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

/** The figures that these tests read, all of them known. */
interface Read
  extends Readonly<
    Record<
      | 'magnification'
      | 'ringMagnification'
      | 'effectiveFNumber'
      | 'lightLossStops'
      | 'airyUm'
      | 'exposureErrorStops'
      | 'workingDistanceMm'
      | 'pupilDiameterMm'
      | 'contrast'
      | 'massKg'
      | 'centreOfGravityMm',
      number
    >
  > {
  readonly fieldMm: readonly [number, number];
  readonly reach: readonly [number, number];
  readonly depthMm: { readonly total: number };
  readonly measured?: readonly string[];
}

const figuresWith = (change: Readonly<Record<string, string | null>>, shot = 'frost') => {
  const core = coreWith(changed(EXAMPLE_PLAN, change));
  return core.figures(PLAN).get(shot) as unknown as Read;
};

const before = figuresWith({});

describe('a working distance that was measured with a lens of unknown length', () => {
  const of = (change: Readonly<Record<string, string | null>>) =>
    coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('skin') as unknown as {
      readonly leastTiltDeg: number;
      readonly workingDistanceMm: number;
      readonly pupilDiameterMm: number;
    };
  const traced = of({});
  const measured = (mm: number) =>
    of({
      'kit/lenses/long-200/length': null,
      'shots/skin/measured': `{ working-distance: ${mm} mm }`,
    });

  it('gives what its length gives, since the pupil’s distance needs none', () => {
    const { leastTiltDeg, pupilDiameterMm } = measured(traced.workingDistanceMm);
    expect(leastTiltDeg).toBeCloseTo(traced.leastTiltDeg, 6);
    expect(pupilDiameterMm).toBeCloseTo(traced.pupilDiameterMm, 6);
  });

  it('has its front hidden by more tilt the nearer that stands: nothing is taken for the pupil’s depth', () => {
    const [near, far] = [0.9, 1.1].map((part) => measured(part * traced.workingDistanceMm));
    expect(near!.leastTiltDeg).toBeGreaterThan(traced.leastTiltDeg);
    expect(far!.leastTiltDeg).toBeLessThan(traced.leastTiltDeg);
  });
});

describe('a shot’s own measurement', () => {
  it('of the field gives field and magnification', () => {
    const figures = figuresWith({ 'shots/frost/measured': '{ field: 58 mm }' });
    expect(figures.fieldMm[0]).toBeCloseTo(58, 9);
    expect(figures.magnification).toBeCloseTo(36 / 58, 9);
    expect(figures.measured).toEqual(expect.arrayContaining(['fieldMm', 'magnification']));
    // The ring stands where it shows that.
    expect(figures.ringMagnification).toBeGreaterThan(before.ringMagnification);
  });

  it('of the effective f-number gives loss, Airy disk, exposure and depth', () => {
    const figures = figuresWith({ 'shots/frost/measured': '{ effective-f-number: 16 }' });
    expect(figures.effectiveFNumber).toBe(16);
    expect(figures.lightLossStops).toBeCloseTo(2, 9);
    // First zero of J1, 1.21967 (Abramowitz and Stegun, table 9.5), at 0.55 µm.
    expect(figures.airyUm).toBeCloseTo(2 * 1.21967 * 0.55 * 16, 1);
    const lost = 2 * Math.log2(16 / before.effectiveFNumber);
    expect(figures.exposureErrorStops).toBeCloseTo(before.exposureErrorStops - lost, 9);
    // Close up depth goes with 2·c·N_eff/m² (Ray, Applied Photographic Optics).
    expect(figures.depthMm.total / before.depthMm.total).toBeCloseTo(
      16 / before.effectiveFNumber,
      2,
    );
    expect(figures.measured).toEqual(['effectiveFNumber', 'lightLossStops']);
  });

  it('holds in proportion at another aperture than it was taken at', () => {
    const figures = figuresWith({
      'shots/frost/measured': '{ effective-f-number: 16, aperture: f/11 }',
    });
    expect(figures.effectiveFNumber).toBeCloseTo((16 * 8) / 11, 9);
  });

  it('of the working distance moves the pupil with it', () => {
    const mm = before.workingDistanceMm;
    const figures = figuresWith({
      'shots/frost/measured': `{ working-distance: ${(mm + 5).toFixed(4)} mm }`,
    });
    expect(figures.workingDistanceMm).toBeCloseTo(mm + 5, 3);
    expect(figures.measured).toEqual(['workingDistanceMm']);
  });

  it('that agrees with the calculation changes nothing', () => {
    const figures = figuresWith({
      'shots/frost/measured': `{ field: 60 mm, effective-f-number: ${before.effectiveFNumber.toFixed(6)}, working-distance: ${before.workingDistanceMm.toFixed(5)} mm }`,
    });
    expect(figures.depthMm.total).toBeCloseTo(before.depthMm.total, 4);
    expect(figures.pupilDiameterMm).toBeCloseTo(before.pupilDiameterMm, 4);
    expect(figures.contrast).toBeCloseTo(before.contrast, 5);
  });

  it('of mass and balance goes before the sum of the parts', () => {
    const figures = figuresWith({ 'shots/frost/measured': '{ mass: 1.5 kg, balance: 66 mm }' });
    expect(figures.massKg).toBe(1.5);
    expect(figures.centreOfGravityMm).toBe(66);
    expect(figures.measured).toEqual(['massKg', 'centreOfGravityMm']);
  });
});

describe('a rig’s measurement', () => {
  it('at an end of the ring is an end of the reach', () => {
    const figures = figuresWith({ 'rigs/bench/measured': '{ ring: closest, field: 35 mm }' });
    expect(figures.reach[1]).toBeCloseTo(36 / 35, 9);
    expect(figures.fieldMm[0]).toBeCloseTo(60, 9);
    expect(figures.measured).toBeUndefined();
  });

  it('lets a field be framed that the calculation does not reach', () => {
    const change = { 'shots/frost/field': '35 mm' };
    expect(figuresWith(change).magnification).toBeNull();
    const figures = figuresWith({
      ...change,
      'rigs/bench/measured': '{ ring: closest, field: 34.8 mm }',
    });
    expect(figures.magnification).toBeCloseTo(36 / 35, 9);
    expect(figures.fieldMm[0]).toBeCloseTo(35, 9);
  });

  it('is the field where the shot asks for that setting of the ring', () => {
    const figures = figuresWith({
      'rigs/bench/measured': '{ ring: closest, field: 35 mm }',
      'shots/frost/field': null,
      'shots/frost/ring': 'closest',
    });
    expect(figures.fieldMm[0]).toBeCloseTo(35, 9);
    expect(figures.measured).toEqual(['magnification', 'fieldMm']);
  });

  it('holds only near the setting that it was taken at', () => {
    const taken = '{ ring: closest, effective-f-number: 17, aperture: f/8 }';
    const elsewhere = figuresWith({ 'rigs/bench/measured': taken });
    expect(elsewhere.effectiveFNumber).toBe(before.effectiveFNumber);
    const there = figuresWith({ 'rigs/bench/measured': taken, 'shots/frost/field': '36.1 mm' });
    expect(there.effectiveFNumber).toBe(17);
  });

  it('gives way to the shot’s own', () => {
    const figures = figuresWith({
      'rigs/bench/measured': '{ effective-f-number: 20 }',
      'shots/frost/measured': '{ effective-f-number: 16 }',
    });
    expect(figures.effectiveFNumber).toBe(16);
  });
});

describe('is said to be measured', () => {
  const text = changed(EXAMPLE_PLAN, {
    'shots/frost/measured': '{ field: 58 mm, effective-f-number: 24, working-distance: 150 mm }',
  });
  const core = coreWith(text);

  it('beside the values', () => {
    const labels = core
      .hints(PLAN, { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } })
      .map(({ label }) => label);
    expect(labels.filter((label) => label.includes('(measured)'))).toEqual([
      expect.stringMatching(/^0\.621x \(measured\)$/),
      expect.stringMatching(/^f\/24 effective \(measured\) · DOF/),
    ]);
  });

  it('in what is found', () => {
    const said = core
      .findings(PLAN)
      .filter(({ shot }) => shot === 'frost')
      .map(({ what, why }) => `${what} ${why}`);
    expect(said.filter((one) => /f\/24\b/.test(one)).length).toBeGreaterThan(0);
    for (const one of said) expect(one).not.toMatch(/f\/24\b(?! (effective )?\(measured\))/);
  });

  it('on the sheet', () => {
    const { shots } = core.sheet(PLAN);
    const frost = shots.find(({ name }) => name === 'frost')!;
    const notes = Object.fromEntries(frost.settings.map(({ label, note }) => [label, note]));
    expect(notes).toMatchObject({
      Aperture: expect.stringContaining('f/24 effective (measured)'),
      Field: expect.stringContaining('0.621x (measured)'),
      'Working distance': expect.stringContaining('measured'),
    });
  });
});
