/** Coverage of the frame by a light against rays traced here, apart from the code. */
import { describe, expect, it } from 'vitest';
import { coverage, type FrameSide } from '../../shared/mirror/coverage.ts';
import { filmSurface, type TiltAxis } from '../../shared/mirror/film-surface.ts';
import type { FrameView } from '../../shared/mirror/patch.ts';
import type { Source } from '../../shared/mirror/source.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Share of rays, over frame and pupil, that end outside the light: flat film, law of reflection. */
function blackByRays(view: FrameView, tilt: number, about: TiltAxis, source: Source): number {
  const n =
    about === 'level' ? [0, Math.sin(tilt), Math.cos(tilt)] : [Math.sin(tilt), 0, Math.cos(tilt)];
  const [nx, ny, nz] = n as [number, number, number];
  const u = view.pupilDistanceMm;
  const { upRad: up, acrossRad: across, distanceMm: s, face } = source;
  let [black, all] = [0, 0];
  const N = 45;
  for (let i = 0; i < N; i += 1)
    for (let j = 0; j < N; j += 1)
      for (let k = 0; k < 30; k += 1) {
        const fx = view.widthMm * ((i + 0.5) / N - 0.5);
        const fy = view.heightMm * ((j + 0.5) / N - 0.5);
        // A sunflower spreads points over the disc evenly.
        const radius = (view.pupilMm / 2) * Math.sqrt((k + 0.5) / 30);
        const px = radius * Math.cos(k * 2.399963);
        const py = radius * Math.sin(k * 2.399963);
        const back = -(nx * fx + ny * fy);
        const t = back / (back + nz * u);
        const q = [fx * (1 - t), fy * (1 - t), u * t] as const;
        const d = [px - q[0], py - q[1], u - q[2]] as const;
        const twice = 2 * (nx * d[0] + ny * d[1] + nz * d[2]);
        let o = [twice * nx - d[0], twice * ny - d[1], twice * nz - d[2]] as [
          number,
          number,
          number,
        ];
        let at = [...q] as [number, number, number];
        // Turn the scene so that the light stands on the z axis, square to it.
        const unswing = ([x, y, z]: [number, number, number]): [number, number, number] => {
          const x1 = x * Math.cos(across) - z * Math.sin(across);
          const z1 = x * Math.sin(across) + z * Math.cos(across);
          return [x1, y * Math.cos(up) - z1 * Math.sin(up), y * Math.sin(up) + z1 * Math.cos(up)];
        };
        o = unswing(o);
        at = unswing(at);
        const reach = (s - at[2]) / o[2];
        const [hx, hy] = [at[0] + reach * o[0], at[1] + reach * o[1]];
        const lit =
          reach > 0 &&
          (face.shape === 'round'
            ? Math.hypot(hx, hy) <= face.diameterMm / 2
            : Math.abs(hx) <= face.widthMm / 2 && Math.abs(hy) <= face.heightMm / 2);
        all += 1;
        if (!lit) black += 1;
      }
  return black / all;
}

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

describe('what a light leaves black', () => {
  it.each(CASES)('$name', ({ tilt, about = 'level', source, side }) => {
    const found = coverage(VIEW, filmSurface(rad(tilt), about), source);
    const rays = blackByRays(VIEW, rad(tilt), about, source);
    expect(Math.abs(found.blackShare - rays)).toBeLessThan(0.006);
    expect(found.side).toBe(side);
  });
});
