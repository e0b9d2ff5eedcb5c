/** Least tilt against rays traced here, apart from the code: sampled film, pupil and rim. */
import { describe, expect, it } from 'vitest';
import { leastTiltRad, type MirrorView } from '../../shared/mirror/least-tilt.ts';

const degrees = (rad: number): number => (rad * 180) / Math.PI;

interface Case extends MirrorView {
  readonly name: string;
}

const view = (over: Partial<MirrorView>): MirrorView => ({
  workingDistanceMm: 400,
  rimMm: 77,
  pupilMm: 12.5,
  pupilBehindRimMm: 0,
  fieldAlongMm: 13.5,
  ...over,
});

/**
 * In two dimensions, with angles: does any ray from the sampled film and pupil end inside the rim?
 * The film is walked along its own arc; a point counts if the line to the middle of the pupil
 * crosses the plane of focus inside the frame.
 */
function showsByRays(v: MirrorView, tilt: number): boolean {
  const u = v.workingDistanceMm + v.pupilBehindRimMm;
  const over = v.bowOverMm ?? v.fieldAlongMm;
  const bow = v.bowMm ?? 0;
  const radius = bow === 0 ? Number.POSITIVE_INFINITY : (over * over) / (8 * bow) + bow / 2;
  const walk = v.fieldAlongMm * 0.8;
  const N = 4000;
  for (let i = 0; i <= N; i += 1) {
    const s = -walk + (2 * walk * i) / N;
    const swung = Number.isFinite(radius) ? s / radius : 0;
    const along = Number.isFinite(radius) ? radius * Math.sin(swung) : s;
    const sunk = Number.isFinite(radius) ? radius * (1 - Math.cos(swung)) : 0;
    const y = along * Math.cos(tilt) - sunk * Math.sin(tilt);
    const z = -along * Math.sin(tilt) - sunk * Math.cos(tilt);
    const inFrame = (y * u) / (u - z);
    if (Math.abs(inFrame) > v.fieldAlongMm / 2) continue;
    const normalAngle = tilt + swung;
    for (let j = 0; j <= 4; j += 1) {
      const p = v.pupilMm * (j / 4 - 0.5);
      const toPupil = Math.atan2(p - y, u - z);
      const out = 2 * normalAngle - toPupil;
      if (Math.abs(out) >= Math.PI / 2) continue;
      const hit = y + (v.workingDistanceMm - z) * Math.tan(out);
      if (Math.abs(hit) < v.rimMm / 2) return true;
    }
  }
  return false;
}

function leastByRays(v: MirrorView): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 22; i += 1) {
    const middle = (low + high) / 2;
    if (showsByRays(v, middle)) low = middle;
    else high = middle;
  }
  return high;
}

// Brute force: rays followed by the law of reflection, as showsByRays does.
describe('least tilt', () => {
  it.each([
    { pupilMm: 0, least: 3.713 },
    { pupilMm: 12.5, least: 4.162 },
    { pupilMm: 50, least: 5.504 },
  ])('W 400, h 13.5, R 77, pupil $pupilMm: $least°', ({ pupilMm, least }) => {
    expect(degrees(leastTiltRad(view({ pupilMm })) ?? Number.NaN)).toBeCloseTo(least, 3);
    // The number is that of the rays, to what their grid resolves.
    expect(Math.abs(degrees(leastByRays(view({ pupilMm }))) - least)).toBeLessThan(0.02);
  });

  const CASES: readonly Case[] = [
    { name: 'near and wide', ...view({ workingDistanceMm: 90, fieldAlongMm: 36, pupilMm: 20 }) },
    { name: 'pupil behind the rim', ...view({ pupilBehindRimMm: 110 }) },
    { name: 'pupil before the rim', ...view({ pupilBehindRimMm: -60, workingDistanceMm: 250 }) },
    { name: 'far off, small', ...view({ workingDistanceMm: 900, fieldAlongMm: 4, pupilMm: 3 }) },
    { name: 'bulging', ...view({ bowMm: 0.6, bowOverMm: 60 }) },
    { name: 'hollow', ...view({ bowMm: -0.6, bowOverMm: 60 }) },
    { name: 'very hollow', ...view({ bowMm: -4, bowOverMm: 60, fieldAlongMm: 24 }) },
  ];

  it.each(CASES)('by rays: $name', (v) => {
    const least = leastTiltRad(v) ?? Number.NaN;
    expect(Math.abs(degrees(least - leastByRays(v)))).toBeLessThan(0.02);
  });

  it('needs no more in three dimensions: a round rim is widest where the axis is', () => {
    const v = view({ fieldAlongMm: 13.5 });
    const least = leastTiltRad(v) ?? Number.NaN;
    expect(hitsInSpace(v, 24, least + 1e-4)).toBe(0);
    expect(hitsInSpace(v, 24, least - 2e-3)).toBeGreaterThan(0);
  });
});

/** Rays in space that end inside the round rim: frame `width` across the tilt, flat film. */
function hitsInSpace(v: MirrorView, width: number, tilt: number): number {
  const u = v.workingDistanceMm + v.pupilBehindRimMm;
  const [ny, nz] = [Math.sin(tilt), Math.cos(tilt)];
  let hits = 0;
  for (let i = 0; i <= 24; i += 1)
    for (let j = 0; j <= 24; j += 1) {
      const [fx, fy] = [width * (i / 24 - 0.5), v.fieldAlongMm * (j / 24 - 0.5)];
      // From the frame's point toward the pupil's middle until the film: n·q = 0.
      const t = (-ny * fy) / (-ny * fy + nz * u);
      const q = [fx * (1 - t), fy * (1 - t), u * t] as const;
      for (let k = 0; k < 24; k += 1) {
        const [px, py] = [
          (v.pupilMm / 2) * Math.cos((k * Math.PI) / 12),
          (v.pupilMm / 2) * Math.sin((k * Math.PI) / 12),
        ];
        const d = [px - q[0], py - q[1], u - q[2]] as const;
        const along = 2 * (ny * d[1] + nz * d[2]);
        const out = [-d[0], along * ny - d[1], along * nz - d[2]] as const;
        const reach = (v.workingDistanceMm - q[2]) / out[2];
        if (Math.hypot(q[0] + reach * out[0], q[1] + reach * out[1]) < v.rimMm / 2) hits += 1;
      }
    }
  return hits;
}
