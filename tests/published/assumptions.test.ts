/** What the table of assumptions rests on, beside it: definitions and laws that stand elsewhere. */
import { describe, expect, it } from 'vitest';
import {
  closestDistancePrior,
  INCIDENT,
  LENS_LOSS,
  POLARISER_LOSS,
  REFLECTED,
} from '../../shared/assumptions/table.ts';
import { evOfIlluminance, evOfLuminance } from '../../shared/exposure/ev.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { uncertainIn } from '../support/uncertain.ts';

const value = (figure: { known: boolean; value?: number }): number => {
  if (figure.value === undefined) throw new Error('not known');
  return figure.value;
};

const frost = (change: Readonly<Record<string, string | null>>) =>
  uncertainIn(changed(EXAMPLE_PLAN, change)).get('frost')!;

describe('the constants of meters (ISO 2720:1974, from memory: K 10.6 to 13.4, C 240 to 400)', () => {
  it('lie inside the standard at their middle; K 14 is one that makers use beside it', () => {
    for (const k of [REFLECTED.middle, REFLECTED.low]) {
      expect(k).toBeGreaterThanOrEqual(10.6);
      expect(k).toBeLessThanOrEqual(13.4);
    }
    for (const c of [INCIDENT.low, INCIDENT.middle, INCIDENT.high]) {
      expect(c).toBeGreaterThanOrEqual(240);
      expect(c).toBeLessThanOrEqual(400);
    }
  });

  it('differ by 0.16 and 0.44 of a stop', () => {
    const k = evOfLuminance(1000, REFLECTED.low) - evOfLuminance(1000, REFLECTED.high);
    const c = evOfIlluminance(1000, INCIDENT.low) - evOfIlluminance(1000, INCIDENT.high);
    expect(k).toBeCloseTo(0.1635, 4);
    expect(c).toBeCloseTo(0.4436, 4);
  });
});

// Source: the definition of the f-number, N = f/D (ISO 517), from memory.
describe('the iris at close focus', () => {
  /** Geometry: an entrance pupil of unchanged width before a shorter focal length is a lower f-number. */
  it('keeps its f-number, or its size: N·f_now/f', () => {
    const shot = frost({ 'shots/frost/field': null, 'shots/frost/ring': 'closest' });
    const index = shot.widths.findIndex(({ assumed }) => assumed === 'iris');
    const [held, kept] = [shot.middle, shot.alone(index, 1)].map(({ figures }) =>
      value(figures.effectiveFNumber),
    );
    // At 1x and 310 mm from the sensor: 310 = f·(2 + 1 + 1), so 77.5 mm of the 100.
    expect(kept! / held!).toBeCloseTo(77.5 / 100, 9);
    // A symmetric lens at f/8 and 1x: 8·(1 + 1).
    expect(held).toBeCloseTo(16, 9);
  });
});

// Source: the thin-lens equation, any textbook of optics.
it('the closest distance is at most that of a thin lens, f·(2 + m + 1/m) (Gauss; any textbook)', () => {
  for (const [f, m] of [
    [100, 1],
    [50, 0.15],
    [200, 0.3],
  ] as const) {
    // Object and image distance of a thin lens: f·(1 + 1/m) and f·(1 + m).
    const thin = f * (1 + 1 / m) + f * (1 + m);
    expect(closestDistancePrior(f, m).high).toBeCloseTo(thin, 9);
    expect(closestDistancePrior(f, m).middle).toBeLessThan(thin);
  }
});

describe('what glass takes', () => {
  it('a T-number is N/√τ (definition; ISO 517, from memory)', () => {
    // Half the light: 1 stop, T = N·√2. The lens opens to f/2.8.
    const at = (t: string, loss: string | null) =>
      value(
        frost({
          'kit/lenses/macro-100/loss': loss,
          ...(t && { 'kit/lenses/macro-100/t-stop': t }),
        }).middle.figures.exposureErrorStops,
      );
    const tau = 0.5;
    expect(at(`T${(2.8 / Math.sqrt(tau)).toFixed(9)}`, null)).toBeCloseTo(at('', '1 stop'), 6);
  });

  it('lenses of 14 to 20 coated surfaces lie inside (0.5 to 1.5 % lost at each; common practice)', () => {
    const stops = (surfaces: number, each: number) => -surfaces * Math.log2(1 - each);
    expect(stops(14, 0.005)).toBeGreaterThan(LENS_LOSS.low - 0.02);
    expect(stops(20, 0.015)).toBeLessThan(LENS_LOSS.high);
  });

  it('a polariser takes the half of unpolarised light (Malus), and what its sheet absorbs', () => {
    // ⟨cos²⟩ over all directions of polarisation is 1/2: one stop.
    const steps = 360;
    const directions = Array.from({ length: steps }, (_, at) => (at * 2 * Math.PI) / steps);
    const mean = directions.reduce((sum, angle) => sum + Math.cos(angle) ** 2, 0) / steps;
    const ideal = -Math.log2(mean);
    expect(ideal).toBeCloseTo(1, 12);
    expect(POLARISER_LOSS.low).toBeGreaterThan(ideal);
    // Sheets pass 25 to 43 % of unpolarised light (common practice).
    expect(POLARISER_LOSS.low).toBeLessThanOrEqual(-Math.log2(0.43));
    expect(POLARISER_LOSS.high).toBeCloseTo(-Math.log2(0.25), 9);
  });
});

// Source: the inverse-square law of photometry (CIE 017), from memory.
it('a lamp given in lux at a distance follows the inverse square', () => {
  const lamp = (lux: string, distance: string) =>
    value(
      frost({
        'lights/panel': `{ kind: led, colour-temperature: 5600 K, modulation: none, supply: low-voltage, emitting-size: 20 x 20 mm, at: { distance: 800 mm, elevation: 40 deg }, illuminance: ${lux}, illuminance-distance: ${distance} }`,
      }).middle.figures.exposureErrorStops,
    );
  // Twice as far a quarter of the light, as long as the face is small: 20 mm in a metre.
  expect(lamp('1000 lx', '1 m')).toBeCloseTo(lamp('250 lx', '2 m'), 3);
});
