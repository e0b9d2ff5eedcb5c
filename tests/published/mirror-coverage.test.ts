/** Coverage of the frame by a light against rays traced apart from the code. */
import { describe, expect, it } from 'vitest';
import { coverage, type FrameSide } from '../../shared/mirror/coverage.ts';
import { filmSurface, type TiltAxis } from '../../shared/mirror/film-surface.ts';
import type { FrameView } from '../../shared/mirror/patch.ts';
import { shadeOf } from '../../shared/mirror/seen-lit.ts';
import type { Source } from '../../shared/mirror/source.ts';
import { blackByRays } from './support/black-by-rays.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

const VIEW: FrameView = { widthMm: 24, heightMm: 13.5, pupilDistanceMm: 420, pupilMm: 12.5 };

interface Case {
  readonly name: string;
  readonly tilt: number;
  readonly about?: TiltAxis;
  readonly source: Source;
  readonly side: FrameSide;
}

const rectangle = (widthMm: number, heightMm: number) =>
  ({ shape: 'rectangle', widthMm, heightMm }) as const;

const at = (face: Source['face'], distanceMm: number, up: number, across: number): Source => ({
  face,
  distanceMm,
  upRad: rad(up),
  acrossRad: rad(across),
});

const CASES: readonly Case[] = [
  { name: 'filled', tilt: 4, source: at(rectangle(600, 400), 500, 26, 0), side: 'none' },
  { name: 'too low', tilt: 4, source: at(rectangle(600, 60), 500, 5.5, 0), side: 'top' },
  { name: 'too high', tilt: 4, source: at(rectangle(600, 60), 500, 11, 0), side: 'bottom' },
  { name: 'too far right', tilt: 5, source: at(rectangle(120, 400), 400, 10, 9), side: 'left' },
  { name: 'too far left', tilt: 5, source: at(rectangle(120, 400), 400, 10, -9), side: 'right' },
  { name: 'small', tilt: 5, source: at(rectangle(30, 18), 400, 10, 0), side: 'around' },
  {
    name: 'round, small',
    tilt: 5,
    source: at({ shape: 'round', diameterMm: 40 }, 300, 10, 0),
    side: 'around',
  },
  {
    name: 'turned sideways',
    tilt: 12,
    about: 'upright',
    source: at(rectangle(70, 300), 300, 0, 20),
    side: 'right',
  },
  { name: 'elsewhere', tilt: 5, source: at(rectangle(300, 200), 400, -40, 0), side: 'all' },
  { name: 'high, steep', tilt: 30, source: at(rectangle(60, 45), 350, 61, 3), side: 'left' },
];

// Brute force: rays followed by the law of reflection (support/black-by-rays.ts).
describe('what a light leaves black', () => {
  it.each(CASES)('$name', ({ tilt, about = 'level', source, side }) => {
    const found = coverage(VIEW, filmSurface(rad(tilt), about), source);
    const rays = blackByRays(VIEW, rad(tilt), about, source);
    expect(Math.abs(found.lostShare - rays)).toBeLessThan(0.006);
    expect(found.side).toBe(side);
  });
});

/** Shares of the frame from which no ray, and only some rays, to the pupil come from the light. */
function shadeByRays(
  view: FrameView,
  tilt: number,
  about: TiltAxis,
  curvature: number,
  { upRad: up, acrossRad: across, distanceMm: s, face }: Source,
): { black: number; dim: number } {
  const n =
    about === 'level' ? [0, Math.sin(tilt), Math.cos(tilt)] : [Math.sin(tilt), 0, Math.cos(tilt)];
  const [nx, ny, nz] = n as [number, number, number];
  const u = view.pupilDistanceMm;
  // The edge and the inside of the pupil: a small light may be seen from its middle alone.
  const pupil = [0, 0.25, 0.5, 0.75, 1].flatMap((part) =>
    Array.from({ length: 64 }, (_, i) => {
      const radius = (part * view.pupilMm) / 2;
      return [
        radius * Math.cos((i * Math.PI) / 32),
        radius * Math.sin((i * Math.PI) / 32),
      ] as const;
    }),
  );
  // A lattice by the golden ratio has no row that an edge of the light could lie along.
  const N = 4000;
  let [black, dim] = [0, 0];
  for (let i = 0; i < N; i += 1) {
    const fx = view.widthMm * ((i + 0.5) / N - 0.5);
    const fy = view.heightMm * (((i * 0.6180339887498949) % 1) - 0.5);
    // Along the ray from the pupil's middle through the frame to the film, a plane or a sphere
    // about the point 1/curvature behind its middle, by steps of Newton.
    let t = 1;
    const at = (share: number) => [fx * share, fy * share, u * (1 - share)] as const;
    const height = (share: number): number => {
      const [x, y, z] = at(share);
      const off = nx * x + ny * y + nz * z;
      return off + (curvature / 2) * (x * x + y * y + z * z);
    };
    for (let step = 0; step < 30; step += 1) {
      const slope = (height(t + 1e-5) - height(t - 1e-5)) / 2e-5;
      t -= height(t) / slope;
    }
    const q = at(t);
    const raw = [nx + curvature * q[0], ny + curvature * q[1], nz + curvature * q[2]] as const;
    const long = Math.hypot(...raw);
    const [mx, my, mz] = [raw[0] / long, raw[1] / long, raw[2] / long];
    let lit = 0;
    for (const [px, py] of pupil) {
      const d = [px - q[0], py - q[1], u - q[2]] as const;
      const twice = 2 * (mx * d[0] + my * d[1] + mz * d[2]);
      // Turn the scene so that the light stands on the z axis, square to it.
      const turned = (x: number, y: number, z: number): readonly [number, number, number] => {
        const x1 = x * Math.cos(across) - z * Math.sin(across);
        const z1 = x * Math.sin(across) + z * Math.cos(across);
        return [x1, y * Math.cos(up) - z1 * Math.sin(up), y * Math.sin(up) + z1 * Math.cos(up)];
      };
      const o = turned(twice * mx - d[0], twice * my - d[1], twice * mz - d[2]);
      const from = turned(q[0], q[1], q[2]);
      const reach = (s - from[2]) / o[2];
      const [hx, hy] = [from[0] + reach * o[0], from[1] + reach * o[1]];
      if (
        reach > 0 &&
        (face.shape === 'round'
          ? Math.hypot(hx, hy) <= face.diameterMm / 2
          : Math.abs(hx) <= face.widthMm / 2 && Math.abs(hy) <= face.heightMm / 2)
      )
        lit += 1;
    }
    if (lit === 0) black += 1;
    else if (lit < pupil.length) dim += 1;
  }
  return { black: black / N, dim: dim / N };
}

const WIDE: FrameView = { ...VIEW, pupilMm: 40 };
const POINT: FrameView = { ...VIEW, pupilMm: 0 };
/** A bow of 1 mm over 120 mm, toward the lens. */
const BOWED = 8 / (120 ** 2 + 4);

// Brute force: rays traced through samples of the pupil, apart from the code.
describe('what is black, and what only dims', () => {
  const each = CASES.flatMap((one) => [
    { ...one, view: VIEW, curvature: 0, of: 'flat' },
    { ...one, view: WIDE, curvature: 0, of: 'flat, wide open' },
    { ...one, view: POINT, curvature: 0, of: 'flat, pinhole' },
    { ...one, view: VIEW, curvature: BOWED, of: 'bowed' },
    { ...one, view: WIDE, curvature: -BOWED, of: 'hollow, wide open' },
  ]);

  it.each(each)('$name, $of', ({ tilt, about = 'level', source, view, curvature }) => {
    const { blackShare, dimShare } = shadeOf(
      view,
      filmSurface(rad(tilt), about, curvature),
      source,
    );
    const rays = shadeByRays(view, rad(tilt), about, curvature, source);
    expect(Math.abs(blackShare - rays.black)).toBeLessThan(0.012);
    expect(Math.abs(dimShare - rays.dim)).toBeLessThan(0.02);
  });

  it('splits what is lost between them: a pinhole dims nothing, a wide pupil little else', () => {
    const { tilt, source } = CASES.find(({ name }) => name === 'too low')!;
    const surface = filmSurface(rad(tilt));
    const pinhole = shadeOf(POINT, surface, source);
    expect(pinhole.dimShare).toBeLessThan(1e-9);
    expect(pinhole.blackShare).toBeCloseTo(coverage(POINT, surface, source).lostShare, 9);
    const wide = shadeOf(WIDE, surface, source);
    expect(wide.blackShare).toBe(0);
    expect(wide.dimShare).toBeGreaterThan(0.9);
  });

  it('is never more than the loss allows, whatever stands where', () => {
    for (const { tilt, about, source } of CASES)
      for (const view of [VIEW, WIDE]) {
        const surface = filmSurface(rad(tilt), about);
        const { lostShare } = coverage(view, surface, source);
        const { blackShare, dimShare } = shadeOf(view, surface, source);
        expect(blackShare).toBeLessThanOrEqual(lostShare + 0.01);
        expect(blackShare + dimShare).toBeGreaterThanOrEqual(lostShare - 0.01);
      }
  });
});
