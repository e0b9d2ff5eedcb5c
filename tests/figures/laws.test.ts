/** Laws of the figures, on random benches: inputs exchanged on the bench, nothing read again. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bench, substitute } from '../../shared/figures/bench.ts';
import { figuresOf } from '../../shared/figures/compute.ts';
import { type Figure, known } from '../../shared/figures/figure.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { CONVERTER_PLAN } from '../planted/support/converter-plan.ts';
import { entryId } from '../support/entry-id.ts';
import { PLAN, ROOT } from '../support/plans.ts';

const store = new Store();
store.give(PLAN, CONVERTER_PLAN);
const bench = new Analysis(store, { rootOf: () => ROOT }).bench(PLAN, entryId('shots/edge'))!;

const sure = <T>(figure: Figure<T>): T => {
  if (!figure.known) throw new Error(`not known: ${figure.because ?? figure.needs[0]?.key}`);
  return figure.value;
};

const [least, most] = sure(figuresOf(bench).reach);

const magnification = fc.double({ min: least * 1.001, max: most * 0.999, noNaN: true });
const fNumber = fc.double({ min: 4, max: 32, noNaN: true });
const seconds = fc.double({ min: 1 / 4000, max: 1 / 25, noNaN: true });
const iso = fc.integer({ min: 50, max: 25_600 });
const shutter = (time: number) =>
  known({ kind: 'time' as const, seconds: time }) as Bench['shutter'];

const at = (inputs: Partial<Bench>) => figuresOf(substitute(bench, inputs));

describe('magnification and field', () => {
  it('the field is the recorded area over the magnification that was asked for', () => {
    fc.assert(
      fc.property(magnification, (m) => {
        const figures = at({ wantedMagnification: known(m) });
        const area = sure(bench.recordedAreaMm);
        const [width, height] = sure(figures.fieldMm);
        expect(sure(figures.magnification)).toBeCloseTo(m, 9);
        expect(width).toBeCloseTo(area.width / m, 7);
        expect(height).toBeCloseTo(area.height / m, 7);
      }),
    );
  });

  it('closer costs light and room: effective f-number and distance are monotone', () => {
    fc.assert(
      fc.property(magnification, magnification, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [far, near] = [Math.min(a, b), Math.max(a, b)].map((m) =>
          at({ wantedMagnification: known(m) }),
        ) as [ReturnType<typeof at>, ReturnType<typeof at>];
        expect(sure(near.effectiveFNumber)).toBeGreaterThan(sure(far.effectiveFNumber));
        expect(sure(near.workingDistanceMm)).toBeLessThan(sure(far.workingDistanceMm));
        expect(sure(near.depthMm.total)).toBeLessThan(sure(far.depthMm.total));
      }),
    );
  });

  it('what is lost is lost part by part', () => {
    fc.assert(
      fc.property(magnification, fNumber, (m, n) => {
        const figures = at({ wantedMagnification: known(m), marked: known(n) });
        const sum = sure(figures.lossByPart).reduce((total, { stops }) => total + stops, 0);
        expect(sum).toBeCloseTo(sure(figures.lightLossStops), 9);
        const ratio = sure(figures.effectiveFNumber) / n;
        expect(2 * Math.log2(ratio)).toBeCloseTo(sure(figures.lightLossStops), 9);
      }),
    );
  });
});

describe('depth and diffraction', () => {
  it('stopping down deepens and takes contrast', () => {
    fc.assert(
      fc.property(fNumber, fNumber, magnification, (a, b, m) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [open, closed] = [Math.min(a, b), Math.max(a, b)].map((n) =>
          at({ marked: known(n), wantedMagnification: known(m) }),
        ) as [ReturnType<typeof at>, ReturnType<typeof at>];
        expect(sure(closed.depthMm.total)).toBeGreaterThan(sure(open.depthMm.total));
        expect(sure(closed.usableDepthMm)).toBeGreaterThan(sure(open.usableDepthMm));
        expect(sure(closed.airyUm)).toBeGreaterThan(sure(open.airyUm));
        expect(sure(closed.contrast)).toBeLessThan(sure(open.contrast));
      }),
    );
  });

  it('a larger circle of confusion passes more; judged depth is never under the geometric one', () => {
    const circle = fc.double({ min: 0.005, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(circle, circle, fNumber, (a, b, n) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [small, large] = [Math.min(a, b), Math.max(a, b)].map((c) =>
          at({ givenCircleMm: known(c), marked: known(n) }),
        ) as [ReturnType<typeof at>, ReturnType<typeof at>];
        expect(sure(large.depthMm.total)).toBeGreaterThan(sure(small.depthMm.total));
        const judged = sure(small.usableDepthMm);
        expect(judged).toBeGreaterThanOrEqual(sure(small.depthMm.total) * (1 - 1e-12));
      }),
    );
  });
});

describe('exposure', () => {
  it('at the ISO that is needed nothing is off', () => {
    fc.assert(
      fc.property(magnification, fNumber, seconds, (m, n, time) => {
        const inputs = { wantedMagnification: known(m), marked: known(n), shutter: shutter(time) };
        const needed = sure(at(inputs).isoNeeded);
        const balanced = at({ ...inputs, iso: known(needed) });
        expect(sure(balanced.exposureErrorStops)).toBeCloseTo(0, 9);
        expect(sure(balanced.isoNeeded)).toBeCloseTo(needed, 6);
      }),
    );
  });

  it('a stop of time, of ISO or of aperture is a stop', () => {
    fc.assert(
      fc.property(fNumber, seconds, iso, (n, time, speed) => {
        const inputs = { marked: known(n), shutter: shutter(time), iso: known(speed) };
        const error = sure(at(inputs).exposureErrorStops);
        const of = (change: Partial<Bench>) =>
          sure(at({ ...inputs, ...change }).exposureErrorStops) - error;
        expect(of({ shutter: shutter(time / 2) })).toBeCloseTo(-1, 9);
        expect(of({ iso: known(2 * speed) })).toBeCloseTo(1, 9);
        expect(of({ marked: known(n * Math.SQRT2) })).toBeCloseTo(-1, 9);
      }),
    );
  });
});

describe('substitution', () => {
  it('changes what it names and leaves the bench as it was', () => {
    const before = JSON.stringify(figuresOf(bench));
    at({ marked: known(22), iso: known(100) });
    expect(JSON.stringify(figuresOf(bench))).toBe(before);
    expect(JSON.stringify(at({}))).toBe(before);
  });
});
