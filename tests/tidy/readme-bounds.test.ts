/** The sizes of what the model leaves out, as the page on accuracy states them. */
import { expect, it } from 'vitest';
import { illuminanceOfEv, luminanceOfEv } from '../../shared/exposure/ev.ts';
import { closestFocalMm } from '../../shared/optics/focal-length.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';
import { read } from './support/project.ts';

const ACCURACY = read('tests/published/ACCURACY.md');

function lossAt15x(pupilRatio: string): number {
  const plan = changed(EXAMPLE_PLAN, {
    'shots/frost/rig': 'stacked',
    'shots/frost/field': null,
    'shots/frost/magnification': '1.5x',
    'kit/lenses/macro-100/pupil-ratio': pupilRatio,
  });
  return coreWith(plan).figures(PLAN).get('frost')?.lightLossStops as number;
}

it('a pupil ratio of 0.8 taken as 1', () => {
  expect(ACCURACY).toContain('0.8 against 1 is 0.29 stop');
  expect(lossAt15x('0.8') - lossAt15x('1')).toBeCloseTo(0.29, 2);
});

// Common practice: a macro lens with internal focusing shortens its focal length as it gets closer;
// an iris that keeps its size then works as a wider aperture than the one marked.
it.each([
  [100, 310, 1],
  [200, 850, 0.3],
])('an iris that keeps its size in a lens of %d mm', (focalMm, fromSensorMm, magnification) => {
  expect(ACCURACY).toContain('| 0.8 stop | an iris that keeps its size');
  const stops = 2 * Math.log2(focalMm / closestFocalMm({ fromSensorMm, magnification }));
  expect(stops).toBeGreaterThan(0.7);
  expect(stops).toBeLessThan(0.85);
});

// ISO 2720, from memory: K from 10.6 to 13.4, C from 240 to 400 for flat and to 540 for domed
// receptors; K 14 and C 340 are what makers that depart from 12.5 and 250 usually take.
it('meters made for other constants', () => {
  expect(ACCURACY).toContain(
    'K 14 reads 0.16 stop otherwise, one for C 340 (a domed receptor) 0.44',
  );
  // The constants that readings of a plan are taken to be made for: at ISO 100, EV 0 is K/100 and C/100.
  const [usualK, usualC] = [100 * luminanceOfEv(0), 100 * illuminanceOfEv(0)];
  expect(Math.log2(14 / usualK)).toBeCloseTo(0.16, 2);
  expect(Math.log2(340 / usualC)).toBeCloseTo(0.44, 2);
});
