/**
 * A polariser before the lens and a polarising sheet on the light, on a film that mirrors it.
 * Source: É.-L. Malus, 1809: half of unpolarised light passes an ideal polariser, all of what is
 * polarised in line with it, nothing of what is crossed.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

const skinWith = (change: Readonly<Record<string, string | null>>) =>
  coreWith(changed(EXAMPLE_PLAN, change)).figures(PLAN).get('skin')!;

const error = (change: Readonly<Record<string, string | null>>): number =>
  skinWith(change).exposureErrorStops as number;

const filters = '\n    polariser: { kind: polariser, loss: 1.5 stops }';
const on = { 'kit/filters': filters, 'shots/skin/filters': '[polariser]' };

describe('a polariser of 1.5 stops on a film', () => {
  it('takes its 1.5 stops of a light that is not polarised', () => {
    expect(error(on) - error({})).toBeCloseTo(-1.5, 9);
  });

  it('leaves the half that a sheet in line with it has sorted out already', () => {
    expect(error({ ...on, 'lights/strip/polarised': 'parallel' }) - error({})).toBeCloseTo(-0.5, 9);
  });

  it('leaves what is not known, crossed with the sheet', () => {
    const skin = skinWith({ ...on, 'lights/strip/polarised': 'crossed' });
    expect(skin.exposureErrorStops).toBeNull();
    expect(skin.notKnown.exposureErrorStops).toMatch(/crossed with strip/);
  });

  // Common practice, from memory: sheets take 1.2 to 2 stops of a light that is not polarised.
  it('knows the exposure under a sheet of the shot to within what sheets take', () => {
    const sheet = { 'shots/skin/relight': '{ strip: { polarised: parallel } }' };
    const uncertain = uncertainIn(changed(EXAMPLE_PLAN, sheet)).get('skin')!;
    const index = uncertain.widths.findIndex(({ assumed }) => assumed === 'sheet-loss');
    for (const [end, stops] of [
      [-1, 1.2],
      [1, 2],
    ] as const) {
      const { exposureErrorStops: there } = uncertain.alone(index, end).figures;
      expect(there.known && there.value - error({})).toBeCloseTo(-stops, 9);
    }
  });

  it('is not asked about without a polariser', () => {
    expect(error({ 'lights/strip/polarised': 'crossed' })).toBeCloseTo(error({}), 9);
  });
});
