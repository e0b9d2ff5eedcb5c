/**
 * Random rigs with parts in every order, written as plans, against
 * rays followed from element to element on the bench of support/bench.ts, apart from the code.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { ShotFiguresJson } from '../../shared/figures/json.ts';
import type { ChainPart } from '../../shared/optics/parts.ts';
import { figuresOfPlan, numberIn } from './support/command-line.ts';
import {
  blurOf,
  KINDS_OF_RIG,
  measured,
  type RigOnBench,
  randomRigs,
  throughStopEdge,
} from './support/rig-on-bench.ts';
import { plain, type WrittenShot, writtenPlan } from './support/written-plan.ts';

const CIRCLE_MM = 0.03;

/** The rig's lens, with its closest setting where the bench has its ring. */
function writtenParts({ parts, ring, lens }: RigOnBench): ChainPart[] {
  const at = ring === 0 ? 1 : ring;
  const closest = { fromSensorMm: lens.focal * (2 + at + 1 / at), magnification: at };
  return parts.map((part) => (part.kind === 'lens' ? { ...part, closest } : part));
}

const written = (bench: RigOnBench, asks: Readonly<Record<string, string>>): WrittenShot => ({
  parts: writtenParts(bench),
  fields: { aperture: `f/${plain(bench.fNumber)}`, ...asks },
});

const byRing = (bench: RigOnBench) =>
  written(bench, { ring: bench.ring === 0 ? 'infinity' : 'closest' });

// Brute force: rays followed from element to element.
describe.each(KINDS_OF_RIG)('converters: %s, close-up: %s', (converters, closeUp) => {
  const seed = 501 + KINDS_OF_RIG.findIndex(([c, up]) => c === converters && up === closeUp);
  const rigs = randomRigs(seed, 150, converters, closeUp);
  let figures: Readonly<Record<string, ShotFiguresJson>> = {};

  beforeAll(() => {
    const shots = rigs.map((bench, index) => [`rig-${index}`, byRing(bench)] as const);
    const plan = writtenPlan(Object.fromEntries(shots), {
      'circle-of-confusion': `${CIRCLE_MM} mm`,
    });
    figures = figuresOfPlan(plan);
  });

  const each = (check: (bench: RigOnBench, figures: ShotFiguresJson) => void) => {
    for (const [index, bench] of rigs.entries()) check(bench, figures[`rig-${index}`]!);
  };

  it('magnification and effective f-number', () => {
    each((bench, shot) => {
      const { magnification, effectiveFNumber } = measured(bench);
      expect(numberIn(shot, 'magnification') / magnification).toBeCloseTo(1, 6);
      expect(numberIn(shot, 'effectiveFNumber') / effectiveFNumber).toBeCloseTo(1, 6);
      const lost = 2 * Math.log2(effectiveFNumber / bench.fNumber);
      expect(numberIn(shot, 'lightLossStops')).toBeCloseTo(lost, 6);
    });
  });

  it('where the subject stands', () => {
    each((bench, shot) => {
      const { subject } = measured(bench);
      expect((numberIn(shot, 'workingDistanceMm') + bench.front) / subject).toBeCloseTo(1, 6);
    });
  });

  // Brute force: the marginal ray's slope at the subject. By the invariant of J. L. Lagrange it is m times
  // that at the sensor, 1/(2·N_eff), whatever stands between them.
  it('the cone of light that leaves the subject', () => {
    each((bench, shot) => {
      const { subject } = measured(bench);
      const half = Math.abs(throughStopEdge(bench, { z: subject, y: 0 }).slope);
      const told = numberIn(shot, 'magnification') / (2 * numberIn(shot, 'effectiveFNumber'));
      expect(told / half).toBeCloseTo(1, 5);
    });
  });

  // A close-up shows the subject an image of the pupil, whose place the figures don't tell.
  if (!closeUp)
    it('the entrance pupil, by that cone', () => {
      each((bench, shot) => {
        const { subject } = measured(bench);
        const half = Math.abs(throughStopEdge(bench, { z: subject, y: 0 }).slope);
        const front = bench.aheadOfStop[0]!.z - bench.lens.front.z;
        const pupil = front + bench.lens.hiatus + bench.lens.pupilAhead;
        const cone = numberIn(shot, 'pupilDiameterMm') / (subject - pupil);
        expect(cone / (2 * half)).toBeCloseTo(1, 5);
      });
    });

  it('depth: points at its ends blur to the circle of confusion on the sensor', () => {
    let ends = 0;
    each((bench, shot) => {
      const { subject } = measured(bench);
      const glass = bench.aheadOfStop.at(-1)!.z;
      const front = subject - numberIn(shot, 'depthMm.front');
      if (front > glass) {
        expect(blurOf(bench, front) / CIRCLE_MM).toBeCloseTo(1, 4);
        ends++;
      }
      const { behind } = shot.depthMm as { behind: number | 'endless' };
      if (behind === 'endless') {
        // However far behind the subject, nothing blurs beyond the circle.
        expect(blurOf(bench, subject + 1e9)).toBeLessThanOrEqual(CIRCLE_MM * 1.0001);
      } else if (behind < 1e6) {
        expect(blurOf(bench, subject + behind) / CIRCLE_MM).toBeCloseTo(1, 4);
        ends++;
      }
    });
    expect(ends).toBeGreaterThan(150);
  });
});

// Brute force: the ring that the bench had when its magnification was measured.
describe('a magnification asked for', () => {
  // Without a close-up the magnification grows with the ring, so that it fixes the ring.
  it('sets the ring as the bench had it, with the parts in any order', () => {
    const rigs = randomRigs(77, 200, 'thin, any order', false).filter(({ ring }) => ring > 0);
    const shots = rigs.map((bench, index) => {
      const closest = { fromSensorMm: 4 * bench.lens.focal, magnification: 1 };
      const parts = bench.parts.map((part) => (part.kind === 'lens' ? { ...part, closest } : part));
      const magnification = `${plain(measured(bench).magnification)}x`;
      return [`rig-${index}`, { ...written(bench, { magnification }), parts }] as const;
    });
    expect(shots.length).toBeGreaterThan(60);
    const figures = figuresOfPlan(writtenPlan(Object.fromEntries(shots)));
    for (const [index, bench] of rigs.entries()) {
      const shot = figures[`rig-${index}`];
      const { effectiveFNumber } = measured(bench);
      expect(numberIn(shot, 'ringMagnification')).toBeCloseTo(bench.ring, 5);
      expect(numberIn(shot, 'effectiveFNumber') / effectiveFNumber).toBeCloseTo(1, 6);
    }
  });
});
