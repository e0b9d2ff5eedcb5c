/**
 * Depth that a bubble needs, and where to focus in it. Judged by brute force: rays from the middle of the
 * entrance pupil through points of the frame, from its middle out to its edge, each followed to where it
 * first meets the sphere; the bubble is moved along the axis until its nearest and its farthest point in
 * the frame are blurred alike. Where the pupil stands follows from the thin-lens equation (OpenStax, University Physics vol. 3,
 * ch. 2): P = f·(1/m + 1) for a pupil ratio of 1.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { focusBehindNearestMm } from '../../shared/optics/focus-place.ts';
import { sphereDepthMm } from '../../shared/optics/needed-depth.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

interface Seen {
  readonly radiusMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pupilMm: number;
}

/** Where the ray through this point of the frame meets the sphere, behind the plane of focus; null: it misses. */
function hitMm({ radiusMm, pupilMm }: Seen, aheadMm: number, offAxisMm: number): number | null {
  const toCentre = pupilMm - aheadMm + radiusMm;
  const cos = pupilMm / Math.hypot(offAxisMm, pupilMm);
  const root = (toCentre * cos) ** 2 - toCentre ** 2 + radiusMm ** 2;
  return root < 0 ? null : (toCentre * cos - Math.sqrt(root)) * cos - pupilMm;
}

/** How far behind the plane of focus the farthest visible point lies, the nearest being so far ahead of it. */
function farthestMm(seen: Seen, aheadMm: number): number {
  const { widthMm, heightMm } = seen;
  let farthest = -aheadMm;
  for (let edge = 0; edge <= 20; edge++) {
    // Along the frame's right and upper edge: from the middle of one to the corner to the middle of the other.
    const x = (widthMm / 2) * Math.min(1, 2 - edge / 10);
    const y = (heightMm / 2) * Math.min(1, edge / 10);
    const toEdge = Math.hypot(x, y);
    let [hits, misses] = [0, toEdge];
    for (let i = 1; i <= 200; i++) {
      const hit = hitMm(seen, aheadMm, (toEdge * i) / 200);
      if (hit === null) {
        misses = (toEdge * i) / 200;
        break;
      }
      hits = (toEdge * i) / 200;
      farthest = Math.max(farthest, hit);
    }
    // The limb lies between the last ray that hit and the first that missed.
    for (let step = 0; hits < misses && step < 40; step++) {
      const middle = (hits + misses) / 2;
      const hit = hitMm(seen, aheadMm, middle);
      if (hit === null) misses = middle;
      else {
        hits = middle;
        farthest = Math.max(farthest, hit);
      }
    }
  }
  return farthest;
}

/** Depth and place of focus, by moving the bubble until both ends are blurred alike. */
function traced(seen: Seen): { readonly depthMm: number; readonly aheadMm: number } {
  let [low, high] = [0, seen.radiusMm];
  for (let step = 0; step < 40; step++) {
    const ahead = (low + high) / 2;
    const far = farthestMm(seen, ahead);
    const isNearBlurrier = ahead / (seen.pupilMm - ahead) > far / (seen.pupilMm + far);
    if (isNearBlurrier) high = ahead;
    else low = ahead;
  }
  return { aheadMm: low, depthMm: low + farthestMm(seen, low) };
}

const bubbleFrom = (changes: Readonly<Record<string, string | null>>) =>
  coreWith(
    changed(EXAMPLE_PLAN, {
      'subjects/frost-plate': '{ kind: bubble, diameter: 60 mm }',
      ...changes,
    }),
  )
    .figures(PLAN)
    .get('frost')!;

// Brute force: the rays above, each followed to the sphere; the pupil's place by the thin-lens equation.
describe('depth that a bubble needs', () => {
  it.each<{
    lens: string;
    changes: Readonly<Record<string, string | null>>;
    widthMm: number;
    focalMm: number;
    parallelMm: number;
    perspectiveMm: number;
  }>([
    {
      lens: '100 mm at a 48 mm field',
      changes: { 'shots/frost/field': '48 mm' },
      widthMm: 48,
      // f by its ring: from 100 mm at infinity to 310/4 at 1x, where it gives 1:1.
      focalMm: 100 - (100 - 310 / 4) * (36 / 48),
      parallelMm: 18.1,
      perspectiveMm: 23.5,
    },
    {
      lens: '50 mm at a 46 mm field',
      changes: {
        'shots/frost/field': '46 mm',
        'kit/lenses/macro-100/focal-length': '50 mm',
        'kit/lenses/macro-100/closest': null,
        'kit/tubes/tube-36/length': `${((50 * 36) / 46).toFixed(6)} mm`,
        'rigs/bench/parts': '[body-a, tube-36, macro-100]',
      },
      widthMm: 46,
      focalMm: 50,
      parallelMm: 15.7,
      perspectiveMm: 23.4,
    },
  ])('$lens', ({ changes, widthMm, focalMm, parallelMm, perspectiveMm }) => {
    const figures = bubbleFrom(changes);
    const heightMm = (widthMm * 20.25) / 36;
    const pupilMm = focalMm * (widthMm / 36 + 1);
    const { depthMm, aheadMm } = traced({ radiusMm: 30, widthMm, heightMm, pupilMm });
    const { needed } = figures.depthMm as unknown as { needed: number };
    expect(Math.abs(needed / depthMm - 1)).toBeLessThan(1e-4);
    expect(Math.abs((figures.focusBehindNearestMm as number) / aheadMm - 1)).toBeLessThan(1e-4);
    // Half a diagonal seen in parallel, which is what must not come out.
    const half = Math.hypot(widthMm, heightMm) / 2;
    expect(30 - Math.sqrt(900 - half ** 2)).toBeCloseTo(parallelMm, 1);
    expect(Math.abs(needed / perspectiveMm - 1)).toBeLessThan(0.01);
  });

  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

  it('over random bubbles, frames and lenses', () => {
    fc.assert(
      fc.property(number(3, 80), number(0.1, 3), number(2, 30), (radiusMm, frame, away) => {
        const [widthMm, heightMm] = [radiusMm * frame, (radiusMm * frame * 9) / 16];
        const pupilMm = radiusMm * away;
        const halfDiagonalMm = Math.hypot(widthMm, heightMm) / 2;
        const found = sphereDepthMm({ radiusMm, halfDiagonalMm, pupilDistanceMm: pupilMm });
        const { depthMm, aheadMm } = traced({ radiusMm, widthMm, heightMm, pupilMm });
        expect(Math.abs(found / depthMm - 1)).toBeLessThan(1e-4);
        expect(Math.abs(focusBehindNearestMm(pupilMm, found) / aheadMm - 1)).toBeLessThan(1e-4);
      }),
      { numRuns: 30 },
    );
  });
});
