import { describe, expect, it } from 'vitest';
import { illuminancePerLuminance, type Vector } from '../../shared/exposure/rectangle-source.ts';
import { randomFrom } from './support/random.ts';

type Corners = readonly [Vector, Vector, Vector, Vector];

/** Corners of a rectangle that faces the origin from so far along z. */
function facingRectangle(widthMm: number, heightMm: number, distanceMm: number): Corners {
  const [x, y] = [widthMm / 2, heightMm / 2];
  return [
    [-x, -y, distanceMm],
    [x, -y, distanceMm],
    [x, y, distanceMm],
    [-x, y, distanceMm],
  ];
}

/**
 * The integral by its definition (CIE: illuminance is the integral of luminance over projected solid
 * angle), brute force: the source cut into cells, each cos θ·cos φ/d² of its area.
 */
function byCells(corners: Corners, normal: Vector): number {
  const [origin, right, , up] = corners;
  const side = (to: Vector): Vector => [to[0] - origin[0], to[1] - origin[1], to[2] - origin[2]];
  const a = side(right);
  const b = side(up);
  const facing: Vector = [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  const steps = 700;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < steps; j++) {
      const s = (i + 0.5) / steps;
      const t = (j + 0.5) / steps;
      const x = origin[0] + s * a[0] + t * b[0];
      const y = origin[1] + s * a[1] + t * b[1];
      const z = origin[2] + s * a[2] + t * b[2];
      const squared = x * x + y * y + z * z;
      const falling = x * normal[0] + y * normal[1] + z * normal[2];
      const leaving = Math.abs(x * facing[0] + y * facing[1] + z * facing[2]);
      if (falling > 0) sum += (falling * leaving) / squared ** 2;
    }
  }
  return sum / steps ** 2;
}

// CIE: the definition of illuminance, by brute force and in closed form.
describe('a rectangle as a light', () => {
  it('random rectangles, turned receivers, some cut by the horizon', () => {
    const random = randomFrom(41);
    let cut = 0;
    for (let n = 0; n < 40; n++) {
      const x = random.between(-400, 400);
      const y = random.between(-400, 400);
      const z = random.between(200, 900);
      const w = random.between(50, 800);
      const h = random.between(50, 800);
      const corners: [Vector, Vector, Vector, Vector] = [
        [x, y, z],
        [x + w, y, z],
        [x + w, y + h, z],
        [x, y + h, z],
      ];
      const lean = random.between(0, Math.PI / 2);
      const turn = random.between(0, 2 * Math.PI);
      const normal: Vector = [
        Math.sin(lean) * Math.cos(turn),
        Math.sin(lean) * Math.sin(turn),
        Math.cos(lean),
      ];
      if (corners.some((p) => p[0] * normal[0] + p[1] * normal[1] + p[2] * normal[2] < 0)) cut++;
      const found = illuminancePerLuminance(corners, normal);
      expect(Math.abs(found - byCells(corners, normal))).toBeLessThan(2e-4);
    }
    expect(cut).toBeGreaterThan(5);
  });

  // Closed form for a parallel rectangle above the receiver, a corner over it (E. M. Sparrow and R. D. Cess,
  // Radiation Heat Transfer; the differential-to-finite factor): with a = w/d, b = h/d,
  // F = (1/2π)·[a/√(1+a²)·atan(b/√(1+a²)) + b/√(1+b²)·atan(a/√(1+b²))], four of them around the centre.
  it('facing, by the closed form', () => {
    for (const [w, h, d] of [
      [600, 400, 500],
      [600, 400, 1000],
      [1200, 20, 80],
    ] as const) {
      const a = w / 2 / d;
      const b = h / 2 / d;
      const ra = Math.sqrt(1 + a * a);
      const rb = Math.sqrt(1 + b * b);
      const quarter = ((a / ra) * Math.atan(b / ra) + (b / rb) * Math.atan(a / rb)) / (2 * Math.PI);
      const found = illuminancePerLuminance(facingRectangle(w, h, d), [0, 0, 1]);
      expect(found).toBeCloseTo(4 * quarter * Math.PI, 10);
    }
  });

  // J. H. Lambert: a sky of even luminance L lights a level surface with π·L.
  it('as good as endless it is π, behind the surface nothing', () => {
    expect(illuminancePerLuminance(facingRectangle(1e9, 1e9, 1), [0, 0, 1])).toBeCloseTo(
      Math.PI,
      6,
    );
    expect(illuminancePerLuminance(facingRectangle(600, 400, 500), [0, 0, -1])).toBe(0);
  });
});

describe('a panel moved', () => {
  const moved = (widthMm: number, heightMm: number): number => {
    const at = (distanceMm: number) =>
      illuminancePerLuminance(facingRectangle(widthMm, heightMm, distanceMm), [0, 0, 1]);
    return Math.log2(at(1000) / at(500));
  };

  // Brute force: both places by cells, and what one has more than the other in stops.
  it('600 × 400 mm from 500 to 1000 mm loses 1.70 stops', () => {
    const [near, far] = [500, 1000].map((at) =>
      byCells(facingRectangle(600, 400, at), [0, 0, 1]),
    ) as [number, number];
    const stops = moved(600, 400);
    expect(stops).toBeCloseTo(Math.log2(far / near), 4);
    expect(stops).toBeCloseTo(-1.7, 2);
  });

  // Common practice: the inverse square law, for a source that is small against its distance.
  it('a small one loses its two stops', () => {
    expect(moved(6, 4)).toBeCloseTo(-2, 3);
  });
});
