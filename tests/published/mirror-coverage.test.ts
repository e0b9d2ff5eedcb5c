/** Coverage of the frame by a light against rays traced apart from the code. */
import { describe, expect, it } from 'vitest';
import { coverage, type FrameSide } from '../../shared/mirror/coverage.ts';
import { filmSurface, type TiltAxis } from '../../shared/mirror/film-surface.ts';
import type { FrameView } from '../../shared/mirror/patch.ts';
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
    expect(Math.abs(found.blackShare - rays)).toBeLessThan(0.006);
    expect(found.side).toBe(side);
  });
});
