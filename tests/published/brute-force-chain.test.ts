import { describe, expect, it } from 'vitest';
import { arrangeChain } from '../../shared/optics/arrangement.ts';
import { traceChain } from '../../shared/optics/chain.ts';
import { depthByFNumber } from '../../shared/optics/depth.ts';
import {
  blurOf,
  KINDS_OF_RIG,
  measured,
  type RigOnBench,
  randomRigs,
  throughStopEdge,
} from './support/rig-on-bench.ts';

// Brute force: rays followed from element to element (W. J. Smith, paraxial ray tracing).
describe.each(KINDS_OF_RIG)('converters: %s, close-up: %s', (converters, closeUp) => {
  const seed = 7 + KINDS_OF_RIG.findIndex(([c, up]) => c === converters && up === closeUp);

  it('magnification, effective f-number and the pupil as the subject sees it', () => {
    for (const bench of randomRigs(seed, 300, converters, closeUp)) {
      const { subject, magnification, effectiveFNumber } = measured(bench);
      const trace = traced(bench);
      expect(trace.magnification! / magnification).toBeCloseTo(1, 9);
      expect((bench.fNumber * trace.fNumberRatio) / effectiveFNumber).toBeCloseTo(1, 9);
      const m1 = trace.lensMagnification;
      const closedForm = (1 + m1 / bench.lens.pupilRatio) * trace.converterMagnification;
      expect(trace.fNumberRatio / closedForm).toBeCloseTo(1, 9);
      // The marginal ray leaves the subject toward the pupil's edge: D/2 over u.
      const half = Math.abs(throughStopEdge(bench, { z: subject, y: 0 }).slope);
      const cone = Math.abs(trace.pupilFocalMm! / bench.fNumber / trace.pupilDistanceMm!);
      expect(cone / (2 * half)).toBeCloseTo(1, 8);
      if (bench.parts.at(-1)?.kind === 'lens') {
        expect(trace.subjectToSensorMm! + bench.lens.hiatus).toBeCloseTo(subject, 5);
      } else {
        expect((trace.workingDistanceMm! + bench.front) / subject).toBeCloseTo(1, 8);
      }
    }
  });

  it('depth: points at its ends blur to c on the sensor', () => {
    const tried = { front: 0, behind: 0, close: 0 };
    for (const bench of randomRigs(seed + 100, 300, converters, closeUp)) {
      const { subject, effectiveFNumber } = measured(bench);
      const trace = traced(bench);
      const blurMm = 0.03;
      const depth = depthByFNumber({
        blurMm,
        magnification: trace.magnification!,
        effectiveFNumber: bench.fNumber * trace.fNumberRatio,
        pupilDistanceMm: trace.pupilDistanceMm!,
      });
      const front = bench.aheadOfStop.at(-1)?.z as number;
      if (subject - depth.frontMm > front) {
        expect(blurOf(bench, subject - depth.frontMm) / blurMm).toBeCloseTo(1, 5);
        tried.front++;
      }
      if (depth.behindMm < 1e6) {
        expect(blurOf(bench, subject + depth.behindMm) / blurMm).toBeCloseTo(1, 5);
        tried.behind++;
      }
      // Close up, the usual approximation: 2·c·N_eff/m².
      const close = (2 * blurMm * effectiveFNumber) / trace.magnification! ** 2;
      if (close < 0.02 * Math.abs(trace.pupilDistanceMm!)) {
        expect(depth.totalMm / close).toBeGreaterThan(0.999);
        expect(depth.totalMm / close).toBeLessThan(1.001);
        tried.close++;
      }
    }
    // The same rigs on every run: each has both ends, and most stand close.
    expect(tried).toMatchObject({ front: 300, behind: 300 });
    expect(tried.close).toBeGreaterThan(200);
  });
});

function traced(bench: RigOnBench) {
  const arranged = arrangeChain(bench.parts);
  if (!arranged.ok) throw new Error(JSON.stringify(arranged.fault));
  return traceChain(arranged.chain, bench.ring);
}
