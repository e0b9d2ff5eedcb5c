/**
 * A lamp's bench against laws that stand in textbooks, and against faces that are summed piece by
 * piece: do the stated bounds hold where nobody measured?
 *
 * Inverse square and cosine: J. H. Lambert, Photometria, 1760. A disc on its axis, E = π·L·r²/(r² + d²):
 * J. W. T. Walsh, Photometry, from memory. From five times its width on a face is a point to 1 %
 * (common practice).
 */
import { describe, expect, it } from 'vitest';
import { faceOnWeight } from '../../shared/exposure/face-on.ts';
import { entryBench, fitOf } from '../../shared/figures/fitted-entry.ts';
import { lightBench } from '../../shared/figures/light-bench.ts';
import { sigmaOf } from '../../shared/lens-fit/most-likely.ts';
import type { Light } from '../../shared/plan/generated/types.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { PLAN, ROOT } from '../support/plans.ts';
import { type Random, randomFrom } from './support/random.ts';
import { summedWeight } from './support/summed-face.ts';

const C = 250;

/** A light of a plan, as it is lowered. */
function lightOf(keys: string): Light {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, `shootplan: 1\nlights:\n  lamp: { ${keys} }\n`);
  const [id] = analysis.entries.list(PLAN).filter(({ kind }) => kind.kind === 'entry');
  return analysis.entries.lowered(PLAN, id!.id)!.value as Light;
}

const rowsAt = (lux: readonly (readonly [distance: number, lux: number])[]): string =>
  `bench: [${lux.map(([mm, lx]) => `{ distance: ${mm.toFixed(3)} mm, illuminance: ${lx.toFixed(4)} lx }`).join(', ')}]`;

function fitted(keys: string) {
  const light = lightOf(keys);
  const bench = lightBench(light, C)!;
  const fit = fitOf(entryBench('lights', light, C)!)!;
  const luxAt = (mm: number) => (unknowns: readonly number[]) => {
    const { face, luminance } = bench.at(unknowns);
    return Math.log2(luminance * faceOnWeight(face, mm));
  };
  return {
    /** log2 of the lux at a distance, and how sure it is. */
    at: (mm: number) => ({ value: luxAt(mm)(fit.values), sigma: sigmaOf(fit, luxAt(mm)) }),
    ...bench.at(fit.values),
  };
}

/** Against faces summed by Lambert's laws, and Walsh's disc, from memory. */
describe('straight in front of a face', () => {
  it.each([50, 200, 1000])('%d mm away a disc gives what its pieces give', (distance) => {
    const face = { shape: 'round', diameterMm: 300 } as const;
    const pieces = { width: 300, height: 300, isRound: true, distance, upDeg: 0, acrossDeg: 0 };
    expect(
      faceOnWeight(face, distance) / summedWeight(pieces, [0, 0, 1], undefined, 600),
    ).toBeCloseTo(1, 3);
  });

  it.each([50, 200, 1000])('%d mm away a rectangle does too', (distance) => {
    const face = { shape: 'rectangle', widthMm: 300, heightMm: 200 } as const;
    const pieces = { width: 300, height: 200, distance, upDeg: 0, acrossDeg: 0 };
    expect(
      faceOnWeight(face, distance) / summedWeight(pieces, [0, 0, 1], undefined, 400),
    ).toBeCloseTo(1, 3);
  });

  it('inverse square is right to 1 % from five times its width on, and 25 % off at its width', () => {
    const face = { shape: 'round', diameterMm: 300 } as const;
    const point = (mm: number) => (Math.PI * 150 ** 2) / mm ** 2;
    expect(point(1500) / faceOnWeight(face, 1500)).toBeCloseTo(1.01, 6);
    expect(point(300) / faceOnWeight(face, 300)).toBeCloseTo(1.25, 6);
  });
});

/** By Lambert's inverse-square law, and by Walsh's disc, from memory. */
describe('readings that follow a law exactly', () => {
  it('inverse square: the same light at any distance, and a small face', () => {
    const { at, face } = fitted(rowsAt([500, 1000, 2000].map((mm) => [mm, 400e6 / mm ** 2])));
    for (const mm of [300, 700, 4000])
      expect(2 ** at(mm).value / (400e6 / mm ** 2)).toBeCloseTo(1, 1);
    expect(face.shape === 'round' && face.diameterMm).toBeLessThan(150);
  });

  it('a disc: its diameter and its luminance', () => {
    const lux = (mm: number) => (Math.PI * 3000 * 200 ** 2) / (200 ** 2 + mm ** 2);
    const { face, luminance } = fitted(rowsAt([150, 300, 600, 1200].map((mm) => [mm, lux(mm)])));
    expect(face.shape === 'round' && face.diameterMm / 400).toBeCloseTo(1, 1);
    expect(luminance / 3000).toBeCloseTo(1, 1);
  });
});

/** Box-Muller. */
const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random.between(0, 1))) * Math.cos(2 * Math.PI * random.between(0, 1));

/** A reading as far off as readings are: 0.1 stops and 5 mm or 1 % are two standard deviations. */
function read(weight: (mm: number) => number, mm: number, random: Random) {
  const off = (Math.max(5, 0.01 * mm) / 2) * normal(random);
  return [mm, 3000 * weight(mm + off) * 2 ** (0.05 * normal(random))] as const;
}

/** Against faces summed piece by piece by inverse square and cosine (J. H. Lambert, Photometria, 1760). */
describe('95 % bounds at distances that nobody read', () => {
  const faces = [
    ['a panel of known size', 300, 200, false, 'emitting-size: 300 x 200 mm'],
    ['a round face', 400, 400, true, ''],
    ['a square face that nobody gave', 250, 250, false, ''],
    ['a small lamp', 40, 40, true, ''],
  ] as const;
  it('hold in 90 to 99 %, for faces that are summed piece by piece', () => {
    const random = randomFrom(11);
    const shares = faces.map(([, width, height, isRound, keys]) => {
      const kept = new Map<number, number>();
      // Summed on a grid of distances, and drawn straight between them in logarithms.
      const grid = Array.from({ length: 60 }, (_, step) => 150 * 1.06 ** step);
      for (const mm of grid)
        kept.set(
          mm,
          summedWeight(
            { width, height, isRound, distance: mm, upDeg: 0, acrossDeg: 0 },
            [0, 0, 1],
            undefined,
            80,
          ),
        );
      const weight = (mm: number): number => {
        const at = Math.log(mm / 150) / Math.log(1.06);
        const [low, high] = [kept.get(grid[Math.floor(at)]!)!, kept.get(grid[Math.ceil(at)]!)!];
        const share = at - Math.floor(at);
        return low ** (1 - share) * high ** share;
      };
      let [held, tried] = [0, 0];
      for (let draw = 0; draw < 60; draw++) {
        const rows = [300, 600, 1200].map((mm) => read(weight, mm, random));
        const { at } = fitted([keys, rowsAt(rows)].filter(Boolean).join(', '));
        for (const mm of [200, 450, 800, 2500]) {
          const { value, sigma } = at(mm);
          if (Math.abs(value - Math.log2(3000 * weight(mm))) <= 1.96 * sigma) held++;
          tried++;
        }
      }
      return held / tried;
    });
    for (const [index, share] of shares.entries())
      expect(share, faces[index]![0]).toBeGreaterThanOrEqual(0.88);
    const all = shares.reduce((sum, share) => sum + share / shares.length, 0);
    expect(all).toBeGreaterThanOrEqual(0.9);
    expect(all).toBeLessThanOrEqual(0.99);
  });
});
