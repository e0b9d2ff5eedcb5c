/**
 * Where a flat shiny face shows a lamp, against rays: the law of reflection, vector form (Hecht, Optics,
 * section 4.3), followed from points of the frame and of the pupil, with nothing of the program in it.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { imagePlace } from '../../shared/mirror/image-place.ts';
import { saidInFrame } from '../../shared/say/in-frame.ts';
import { manyRuns } from '../support/runs.ts';

type V = readonly [number, number, number];
const rad = (deg: number) => (deg * Math.PI) / 180;
const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

const VIEW = { widthMm: 60, heightMm: 33.75, pupilDistanceMm: 300, pupilMm: 20 };
const GRID = 40;

/** Whether a ray from a point of the pupil by the face at a point of the frame ends in the lamp. */
function isLit(x: number, y: number, pupil: V, n: V, lamp: Lamp): boolean {
  // The film's point that the middle of the pupil sees at (x, y, 0).
  const z = VIEW.pupilDistanceMm;
  const way: V = [x, y, -z];
  const t = -(n[2] * z) / dot(way, n);
  const at: V = [x * t, y * t, z - z * t];
  if (Math.abs(at[0]) > lamp.plate / 2 || Math.abs(at[1] / n[2]) > lamp.plate / 2) return false;
  const back: V = [pupil[0] - at[0], pupil[1] - at[1], pupil[2] - at[2]];
  const k = 2 * dot(back, n);
  const out: V = [k * n[0] - back[0], k * n[1] - back[1], k * n[2] - back[2]];
  const e = rad(lamp.upDeg);
  const centre: V = [0, Math.sin(e) * lamp.distance, Math.cos(e) * lamp.distance];
  const axis: V = [0, Math.sin(e), Math.cos(e)];
  const s = (lamp.distance - dot(at, axis)) / dot(out, axis);
  if (!(s > 0)) return false;
  const hit: V = [at[0] + s * out[0], at[1] + s * out[1], at[2] + s * out[2]];
  const up = dot(
    [hit[0] - centre[0], hit[1] - centre[1], hit[2] - centre[2]],
    [0, Math.cos(e), -Math.sin(e)],
  );
  return Math.abs(hit[0]) <= lamp.width / 2 && Math.abs(up) <= lamp.height / 2;
}

interface Lamp {
  readonly tiltDeg: number;
  readonly upDeg: number;
  readonly distance: number;
  readonly width: number;
  readonly height: number;
  readonly plate: number;
}

/** Rings close enough that the smallest lamp leaves no gap between their images. */
const PUPIL: readonly V[] = [
  [0, 0, VIEW.pupilDistanceMm],
  ...[1, 2 / 3, 1 / 3].flatMap((part) =>
    Array.from(
      { length: 24 },
      (_, i): V => [
        ((part * VIEW.pupilMm) / 2) * Math.cos(rad(15 * i)),
        ((part * VIEW.pupilMm) / 2) * Math.sin(rad(15 * i)),
        VIEW.pupilDistanceMm,
      ],
    ),
  ),
];

function byRays(lamp: Lamp) {
  const n: V = [0, Math.sin(rad(lamp.tiltDeg)), Math.cos(rad(lamp.tiltDeg))];
  let [count, across, up] = [0, 0, 0];
  for (let i = 0; i < GRID; i += 1)
    for (let j = 0; j < GRID; j += 1) {
      const [a, b] = [(2 * (i + 0.5)) / GRID - 1, (2 * (j + 0.5)) / GRID - 1];
      const at = [(a * VIEW.widthMm) / 2, (b * VIEW.heightMm) / 2] as const;
      if (!PUPIL.some((pupil) => isLit(...at, pupil, n, lamp))) continue;
      count += 1;
      across += a;
      up += b;
    }
  return { share: count / GRID ** 2, across: across / count, up: up / count };
}

const placed = (lamp: Lamp) =>
  imagePlace(
    VIEW,
    [0, Math.sin(rad(lamp.tiltDeg)), Math.cos(rad(lamp.tiltDeg))],
    {
      face: { shape: 'rectangle', widthMm: lamp.width, heightMm: lamp.height },
      distanceMm: lamp.distance,
      upRad: rad(lamp.upDeg),
      acrossRad: 0,
    },
    { shape: 'rectangle', widthMm: lamp.plate, heightMm: lamp.plate },
  );

describe('the image of a lamp in a flat face', () => {
  it('lies where rays find it', () => {
    let [seen, unseen] = [0, 0];
    fc.assert(
      fc.property(
        fc.record({
          tiltDeg: fc.integer({ min: 0, max: 25 }),
          upDeg: fc.integer({ min: 0, max: 50 }),
          distance: fc.integer({ min: 150, max: 900 }),
          width: fc.integer({ min: 20, max: 300 }),
          height: fc.integer({ min: 20, max: 200 }),
          plate: fc.constantFrom(30, 50, 500),
        }),
        (lamp) => {
          const [place, rays] = [placed(lamp), byRays(lamp)];
          expect(Math.abs((place?.share ?? 0) - rays.share)).toBeLessThan(0.03);
          if (rays.share === 0) unseen += 1;
          // A few points say little of a middle.
          if (rays.share < 0.05) return;
          seen += 1;
          expect(Math.abs(place!.across - rays.across)).toBeLessThan(0.05);
          expect(Math.abs(place!.up - rays.up)).toBeLessThan(0.08);
        },
      ),
      { numRuns: manyRuns(40) },
    );
    expect(Math.min(seen, unseen)).toBeGreaterThan(manyRuns(40) / 10);
  });

  it('goes up as the lamp does, by the angle that the mirror doubles', () => {
    const lamp = { tiltDeg: 10, distance: 300, width: 20, height: 15, plate: 500 };
    expect(placed({ ...lamp, upDeg: 20 })!.up).toBeCloseTo(0, 1);
    expect(saidInFrame(placed({ ...lamp, upDeg: 20 })!)).toBe('in the middle of the frame');
    expect(saidInFrame(placed({ ...lamp, upDeg: 24 })!)).toBe('at the top of the frame');
    expect(saidInFrame(placed({ ...lamp, upDeg: 32 })!)).toBe('above the frame');
    expect(saidInFrame(placed({ ...lamp, upDeg: 8 })!)).toBe('below the frame');
  });
});

describe('a place in the frame is said', () => {
  it.each([
    [0.1, -0.5, 0.5, 'at the upper left of the frame'],
    [0.1, 0.5, 0.5, 'at the upper right of the frame'],
    [0.1, -0.5, -0.5, 'at the lower left of the frame'],
    [0.1, 0.5, -0.5, 'at the lower right of the frame'],
    [0.1, 0.5, 0, 'on the right of the frame'],
    [0.1, -0.5, 0, 'on the left of the frame'],
    [0.1, 0, -0.5, 'at the bottom of the frame'],
    [0.99, 0, 0, 'all over the frame'],
    [0, 3, 1.2, 'right of the frame'],
    [0, -3, 1.2, 'left of the frame'],
    [0, 0.2, 0.1, 'beside the subject'],
  ] as const)('%s %s %s', (share, across, up, words) => {
    expect(saidInFrame({ share, across, up })).toBe(words);
  });
});
